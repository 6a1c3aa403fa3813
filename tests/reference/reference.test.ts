import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
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
});
