/**
 * Width of text without a font at hand: advance widths of Helvetica for ASCII, in thousandths of the font size (Adobe Font Metrics, core 14 fonts),
 * 600 for the rest. Good enough to place labels and the same on each machine, which a canvas would not be.
 */
const ADVANCE: Record<string, number> = {};
const GROUPS: [number, string][] = [
  [222, "'ijl"],
  [260, '|'],
  [278, ' !,./:;I[]\\ft'],
  [333, '()-`r'],
  [334, '{}'],
  [355, '"'],
  [389, '*'],
  [469, '^'],
  [500, 'JckLsvxyz'],
  [556, '#$0123456789?_abdeghnopqu'],
  [584, '+<=>~'],
  [611, 'FTZ'],
  [667, '&ABEKPSVXY'],
  [722, 'CDHNRUw'],
  [778, 'GOQ'],
  [833, 'Mm'],
  [889, '%'],
  [944, 'W'],
  [1015, '@'],
];
for (const [advance, characters] of GROUPS) for (const character of characters) ADVANCE[character] = advance;
ADVANCE.L = 556;

/** System fonts run wider than Helvetica on some machines; labels get room for the widest that are common (DejaVu Sans, Verdana). */
const WIDEST = 1.15;

/** Width in px of one line of text at a font size; bold text is taken as 12 % wider. */
export function textWidth(text: string, fontSize: number, bold = false): number {
  let sum = 0;
  for (const character of text) sum += ADVANCE[character] ?? 600;
  return (sum * fontSize * WIDEST * (bold ? 1.12 : 1)) / 1000;
}
