import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { csvCell, csvText } from '../../../pipeline/report/tables/csv.ts';

describe('csvText', () => {
  it('writes RFC 4180 with a byte order mark', () => {
    const text = csvText(
      ['a', 'b'],
      [
        { a: 'x, "y"', b: null },
        { a: 'two\nlines', b: 1.5 },
      ],
    );
    expect(text).toBe('\ufeffa,b\r\n"x, ""y""",\r\n"two\nlines",1.5\r\n');
  });

  it('reads back as it was, but for the apostrophe before what looks like a formula', () => {
    const cell = fc.string().map((value) => value.replaceAll('\0', ''));
    fc.assert(
      fc.property(fc.array(fc.record({ a: cell, b: cell }), { minLength: 1 }), (rows) => {
        const read: { a: string; b: string }[] = parse(csvText(['a', 'b'], rows), {
          bom: true,
          columns: true,
          record_delimiter: '\r\n',
        });
        const plain = (value: string) => value.replace(/^'(?=[=+\-@\t\r\n\uff1d\uff0b\uff0d\uff20])/, '');
        expect(read.map((row) => ({ a: plain(row.a), b: plain(row.b) }))).toEqual(
          rows.map((row) => ({ a: plain(row.a), b: plain(row.b) })),
        );
      }),
    );
  });
});

describe('csvCell', () => {
  // Leading characters: OWASP, CSV Injection (=, +, -, @, tab, carriage return, line feed, and their full-width forms).
  it.each(['=1+1', '+1+1', '-1+1', '@SUM(A1)', '\t=1', '\r=1', '\n=1', '\uff1d1', '-', '--1', '+5'])(
    'makes %j harmless',
    (value) => {
      expect(csvCell(value).replace(/^"/, '')[0]).toBe("'");
    },
  );

  it.each(['-5', '-0.25', '12', 'a=b', '2026-03-01'])('leaves %j as it is', (value) => {
    expect(csvCell(value)).toBe(value);
  });

  it('writes numbers, truth values and nothing', () => {
    expect([csvCell(-3), csvCell(true), csvCell(null)]).toEqual(['-3', 'true', '']);
  });
});
