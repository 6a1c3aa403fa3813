import type { z } from 'zod';
import { intervalInputsSchema } from '../../site/interval-inputs.ts';
import { rulesSchema } from '../../site/rules.ts';
import type { Site } from '../../site/site.ts';
import { CLEANING_TASKS } from '../../site/vocabulary.ts';
import type { Review } from '../review-schema.ts';

/** Every setting in force, with its default and what it means; the table of abort texts is left to its own file. */
export function settingsInForce(site: Site, units: readonly string[]): Review['settings'] {
  const defaults = rulesSchema.parse({});
  return [
    ...policies(site, units),
    ...leaves(rulesSchema, site.rules, defaults, 'rules'),
    ...leaves(intervalInputsSchema, site.declared.interval, intervalInputsSchema.parse({}), 'interval'),
  ];
}

function policies(site: Site, units: readonly string[]): Review['settings'] {
  return CLEANING_TASKS.map((task) => {
    const texts = units.map((unit) => {
      const policy = site.policyOf(unit, task);
      if (!policy) return 'no interval';
      return `every ${policy.every} ${policy.counted_in}, grace ${policy.grace_days} days, no record means ${policy.unrecorded_means}`;
    });
    const distinct = [...new Set(texts)];
    const value =
      distinct.length === 1
        ? distinct[0]!
        : distinct
            .map((text) => `${units.filter((_, index) => texts[index] === text).join(' ')}: ${text}`)
            .join('; ');
    return {
      name: `cleaning.${task}`,
      value,
      default: null,
      description: 'When the task falls due, and how a due task with no record is read',
    };
  });
}

function leaves(schema: z.ZodType, value: unknown, standard: unknown, name: string): Review['settings'] {
  const object = objectOf(schema);
  if (object) {
    return Object.entries(object.shape as Record<string, z.ZodType>).flatMap(([key, inner]) =>
      key === 'abort_texts'
        ? []
        : leaves(
            inner,
            (value as Record<string, unknown>)[key],
            (standard as Record<string, unknown>)[key],
            `${name}.${key}`,
          ),
    );
  }
  return [{ name, value: text(value), default: text(standard), description: descriptionOf(schema) }];
}

/** A value as the site file would have it; what is left out as "left out", whose meaning the description gives. */
function text(value: unknown): string {
  if (value === undefined) return 'left out';
  return typeof value === 'object' ? JSON.stringify(value) : String(value);
}

/** What a setting means. A description given before `optional()` or a default belongs to the schema inside. */
function descriptionOf(schema: z.ZodType): string {
  const inner = (schema.def as { innerType?: z.ZodType }).innerType;
  return schema.description ?? (inner ? descriptionOf(inner) : '');
}

/** The object inside a schema's defaults, if there is one. */
function objectOf(schema: z.ZodType): z.ZodObject | undefined {
  const def = schema.def as { type: string; innerType?: z.ZodType };
  if (def.type === 'object') return schema as z.ZodObject;
  if ((def.type === 'prefault' || def.type === 'default') && def.innerType) return objectOf(def.innerType);
  return undefined;
}
