import { z } from 'zod';

/** Actions of the site's own list, as they stood at the end of the month. */

/** `late`: due before the end of the month and not done by then. `done_late`: done, after the day on which it was due. `dropped`: given up by the site. */
export const ACTION_STANDINGS = ['late', 'open', 'done_late', 'done', 'dropped'] as const;
export type ActionStanding = (typeof ACTION_STANDINGS)[number];

const date = z.string().describe('Operating day, yyyy-MM-dd');

export const actionsSchema = z.strictObject({
  kept: z.boolean().describe('Whether any action was read'),
  list: z
    .array(
      z.strictObject({
        decided: date,
        action: z.string(),
        unit: z.string().nullable().describe('Null where it is of no single unit'),
        role: z.string().nullable().describe('Who decides or does it, as a role'),
        due: date.nullable(),
        done_on: date.nullable().describe('Also where that lies after the month'),
        standing: z.enum(ACTION_STANDINGS),
        days_late: z
          .number()
          .int()
          .nullable()
          .describe('Days from due to done, or to the end of the month; null where not late'),
        decided_in_month: z.boolean(),
        file: z.string(),
        sheet: z.string().nullable(),
        row: z.number().int(),
      }),
    )
    .describe('Actions decided in the month, done in it, or not yet done: late ones first'),
  settled_before: z.number().int().min(0).describe('Actions done or dropped before the month'),
});
export type Actions = z.infer<typeof actionsSchema>;
