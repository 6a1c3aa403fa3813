import { z } from 'zod';

/** What a field's schema says against a value; undefined where the value holds. */
export type FieldCheck = (value: unknown) => z.core.$ZodIssue | undefined;

/** Says nothing against any value. */
export const noCheck: FieldCheck = () => undefined;

/** Most texts that are remembered as holding. */
const MOST_TEXTS = 10_000;

/** Checks of texts that are bounds of their length. */
const LENGTH_CHECKS = new Set(['min_length', 'max_length']);

const isPlainText = ({ def, format }: z.ZodString): boolean =>
  format === null && (def.checks ?? []).every(({ _zod }) => LENGTH_CHECKS.has(_zod.def.check));

/** Checks of numbers that are bounds or ask for whole numbers. */
const PLAIN_CHECKS = new Set(['greater_than', 'less_than', 'number_format']);

/**
 * The check of a field, by its schema. The schema is asked only where it could say no: a number inside its bounds, a text of a length inside its bounds, and another text that held before are let through
 * at once, which takes a tenth of the time.
 */
export function fieldCheck(schema: z.ZodType): FieldCheck {
  const ask: FieldCheck = (value) => schema.safeParse(value).error?.issues[0];
  if (schema instanceof z.ZodNumber) return checkOfNumber(schema, ask);
  if (schema instanceof z.ZodBoolean) return (value) => (typeof value === 'boolean' ? undefined : ask(value));
  return checkOfText(schema, ask);
}

function checkOfNumber(schema: z.ZodNumber, ask: FieldCheck): FieldCheck {
  const checks = schema.def.checks ?? [];
  if (!checks.every(({ _zod }) => PLAIN_CHECKS.has(_zod.def.check))) return ask;
  const low = schema.minValue ?? Number.NEGATIVE_INFINITY;
  const high = schema.maxValue ?? Number.POSITIVE_INFINITY;
  const whole = schema.isInt;
  return (value) =>
    typeof value === 'number' && value > low && value < high && (!whole || Number.isSafeInteger(value))
      ? undefined
      : ask(value);
}

function checkOfText(schema: z.ZodType, ask: FieldCheck): FieldCheck {
  if (schema instanceof z.ZodString && isPlainText(schema)) {
    const [low, high] = [schema.minLength ?? 0, schema.maxLength ?? Number.POSITIVE_INFINITY];
    return (value) =>
      typeof value === 'string' && value.length >= low && value.length <= high ? undefined : ask(value);
  }
  const held = new Set<unknown>();
  return (value) => {
    if (held.has(value)) return undefined;
    const issue = ask(value);
    if (issue === undefined && held.size < MOST_TEXTS) held.add(value);
    return issue;
  };
}
