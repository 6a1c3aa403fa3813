import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { librariesInPackage } from '../../pipeline/reference/libraries-page.ts';
import { makeReference } from '../../pipeline/reference/make-reference.ts';

const kept = (name: string) =>
  readFileSync(new URL(`../../pipeline/reference/${name}`, import.meta.url), 'utf8');
const made = await makeReference();

describe('the reference', () => {
  it.each(Object.keys(made))('%s is fresh (else: npm run reference)', (name) => {
    expect(made[name]).toBe(kept(name));
  });

  it('has a JSON Schema that the demo site file fits and a slip does not', () => {
    const validate = new Ajv2020({ strict: false }).compile(JSON.parse(kept('site.schema.json')));
    const demo = parse(readFileSync(new URL('../../data-samples/site.yaml', import.meta.url), 'utf8'));
    expect(validate(demo), JSON.stringify(validate.errors)).toBe(true);
    expect(validate({ ...demo, sitez: [] })).toBe(false);
  });

  it('lists every library that goes to users, and all are under permissive licences', async () => {
    const permissive =
      /^(?:MIT|ISC|0BSD|BSD-2-Clause|BSD-3-Clause|Apache-2\.0|Unlicense|BlueOak-1\.0\.0|Apache-2\.0 AND (?:BSL-1\.0|MIT)|MIT OR Apache-2\.0)$/;
    const libraries = await librariesInPackage();
    expect(libraries.map(({ name }) => name)).toEqual(
      expect.arrayContaining(['vega', 'zod', 'csv-parse', 'tinypool']),
    );
    expect(libraries.filter(({ licence }) => !permissive.test(licence))).toEqual([]);
  });

  it('has a page of methods with a source for each', () => {
    const page = made['methods.md']!;
    const names = [...page.matchAll(/^### (\w+)$/gm)].map((found) => found[1]);
    expect(names).toEqual(
      expect.arrayContaining([
        'circularShiftTest',
        'clopperPearsonInterval',
        'benjaminiHochberg',
        'kaplanMeier',
      ]),
    );
    expect([...page.matchAll(/^Sources?:/gm)]).toHaveLength(names.length);
  });
});
