/** Words that English can hardly do without and German has not. */
export const ENGLISH =
  /\b(the|and|of|with|is|are|to|no|not|for|from|days?|by|on|after|before|or|each|test days|cleaning|records?|units?|failed|months?|interval)\b/;

/** A number with a decimal point, where German has a comma; thousands have three digits behind their point. */
export const DECIMAL_POINT = /(^|[\s(])\d+\.\d{1,2}($|[\s)%])/;
