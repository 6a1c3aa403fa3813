/** Text as it is compared: without regard to letter case, to the kind and number of blanks in a row, and to the way in which accents are encoded. */
export const foldText = (text: string): string => text.normalize('NFC').replace(/\s+/g, ' ').toLowerCase();
