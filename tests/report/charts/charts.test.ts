import { createRequire } from 'node:module';
import { Ajv } from 'ajv';
import { describe, expect, it } from 'vitest';
import { renderChart } from '../../../pipeline/report/charts/render-chart.ts';
import { chartExamples } from './examples.ts';

const schema = createRequire(import.meta.url)('vega-lite/vega-lite-schema.json');
const valid = new Ajv({
  strict: false,
  allErrors: false,
  formats: { 'color-hex': true, uri: true, 'uri-reference': true },
}).compile(schema);

describe.each(chartExamples())('chart $name', ({ name, rows, spec }) => {
  it('has rows to draw', () => {
    expect(rows.length).toBeGreaterThan(0);
  });

  it('is valid against the schema that Vega-Lite publishes', () => {
    const holds = valid(JSON.parse(JSON.stringify(spec)));
    expect(valid.errors ?? []).toEqual([]);
    expect(holds).toBe(true);
  });

  it('has the specification kept', async () => {
    await expect(`${JSON.stringify(spec, null, 1)}\n`).toMatchFileSnapshot(`./__snapshots__/${name}.vl.json`);
  });

  it('draws the picture kept, the same each time, with nothing that a strict content policy would block', async () => {
    const text = { id: name, title: `Example: ${name}`, description: 'An example.' };
    const first = await renderChart(spec, text);
    const second = await renderChart(spec, text);
    const svg = first.svg.toString();
    expect(second.svg.toString()).toBe(svg);
    expect(svg).not.toMatch(/ style=| on\w+=|<style|<script|href|NaN|Infinity|undefined|>null</);
    const kept = svg.replace(/(\d+\.\d{3})\d+/g, '$1').replaceAll('><', '>\n<');
    await expect(`${kept}\n`).toMatchFileSnapshot(`./__snapshots__/${name}.svg`);
  });
});
