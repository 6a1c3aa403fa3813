/**
 * Why a method gave no result. The methods say it in a sentence of their own, which stands here as it is; another language translates the sentences that it knows.
 */
export const reasonText = (sentence: string): string => sentence;

/** Name of a statistical method, as the method gives it. */
export const methodText = (name: string): string => name;
