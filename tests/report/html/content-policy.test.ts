import { describe, expect, it } from 'vitest';
import { contentPolicy, cssString } from '../../../pipeline/report/html/content-policy.ts';

describe('contentPolicy', () => {
  // Content Security Policy Level 3, section 6.6.3.3: base64 of the SHA-256 of the element's text. Values: `printf %s 'a{}' | openssl dgst -sha256 -binary | base64`
  it('allows the style and the script by their hashes and nothing else', () => {
    expect(contentPolicy('a{}', 'a()')).toBe(
      "default-src 'none'; style-src 'sha256-X1RutGBrXCt9KkSaXMK7tHftWiRscFHOhxsS8tv8hBk='; script-src 'sha256-qVpDBgj7bpq5hMAcGp3AOc79J3Y1Z4HvySTwKrWDoy4='; img-src data:; base-uri 'none'; form-action 'none'",
    );
  });
});

describe('cssString', () => {
  it('escapes what could end the string or the sheet', () => {
    expect(cssString('Ward 7, "A" </style>\\')).toBe('"Ward 7, \\22 A\\22  \\3c \\2f style\\3e \\5c "');
  });

  it('keeps letters of other scripts', () => {
    expect(cssString('Klinik Süd 1')).toBe('"Klinik Süd 1"');
  });
});
