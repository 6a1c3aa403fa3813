import { describe, expect, it } from 'vitest';
import { type Encoding, textDecoding } from '../../pipeline/ingest/decode-text.ts';

const decode = (bytes: Uint8Array, declared?: Encoding, pieceSize = bytes.length || 1): string => {
  const decoding = textDecoding(bytes.subarray(0, 3), declared);
  let text = '';
  for (let at = 0; at < bytes.length; at += pieceSize)
    text += decoding.decode(bytes.subarray(at, at + pieceSize));
  return text + decoding.end();
};

const swap = (bytes: Buffer): Buffer => Buffer.from(bytes).swap16();

describe('decoding', () => {
  const text = 'Gerät,134 °C,–,€,😀';
  it.each([
    ['utf-8 without a mark', Buffer.from(text), undefined],
    ['utf-8 with a mark', Buffer.from(`\ufeff${text}`), undefined],
    ['utf-16le by its mark', Buffer.from(`\ufeff${text}`, 'utf16le'), undefined],
    ['utf-16be by its mark', swap(Buffer.from(`\ufeff${text}`, 'utf16le')), undefined],
    ['utf-16le as declared', Buffer.from(text, 'utf16le'), 'utf-16le'],
    ['utf-16be as declared', swap(Buffer.from(text, 'utf16le')), 'utf-16be'],
    ['utf-8 by its mark against the declaration', Buffer.from(`\ufeff${text}`), 'windows-1252'],
  ] as [string, Buffer, Encoding | undefined][])('%s', (_, bytes, declared) => {
    expect(decode(bytes, declared)).toBe(text);
    expect(decode(bytes, declared, 1)).toBe(text);
  });

  // WHATWG Encoding Standard, index windows-1252; Microsoft's best-fit table bestfit1252 gives the same.
  it('reads windows-1252 and not ISO 8859-1', () => {
    const bytes = Uint8Array.from([
      0x80, 0x85, 0x8a, 0x91, 0x92, 0x93, 0x94, 0x96, 0x97, 0x99, 0x9f, 0xb0, 0xe4, 0xff,
    ]);
    expect(decode(bytes, 'windows-1252')).toBe('€…Š‘’“”–—™Ÿ°äÿ');
  });

  it('knows the characters that stand for unknown bytes', () => {
    const utf8 = textDecoding(new Uint8Array(), undefined);
    expect(utf8.isSuspect(utf8.decode(Uint8Array.from([0x47, 0xe4, 0x74])))).toBe(true);
    expect(utf8.isSuspect('Gerät')).toBe(false);
    const western = textDecoding(new Uint8Array(), 'windows-1252');
    expect(western.isSuspect(western.decode(Uint8Array.from([0x81])))).toBe(true);
    expect(western.isSuspect(western.decode(Uint8Array.from([0x80, 0xe4])))).toBe(false);
  });

  it('turns a character that is cut short by the end into a suspect one', () => {
    expect(decode(Uint8Array.from([0x41, 0xc3]))).toBe('A\ufffd');
  });
});
