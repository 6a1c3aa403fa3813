import { z } from 'zod';

/** Languages and measures in which a report can be written. */
export const LANGUAGES = ['en', 'de'] as const;
export type Language = (typeof LANGUAGES)[number];
export const REPORT_PRESSURES = ['kPa', 'mbar', 'bar', 'psi'] as const;
export const REPORT_TEMPERATURES = ['C', 'F'] as const;

/** How the report is written. The data files stay in English, kPa and degrees Celsius. */
export const reportSettingsSchema = z
  .strictObject({
    language: z
      .enum(LANGUAGES)
      .default('en')
      .describe('Language of the pages: en English, de German; the data files keep their English names'),
    pressure: z
      .enum(REPORT_PRESSURES)
      .default('kPa')
      .describe('Unit of pressure on the pages, for leak rates: this a minute'),
    temperature: z
      .enum(REPORT_TEMPERATURES)
      .default('C')
      .describe('Unit of temperature on the pages: C (differences in K) or F (differences in °F)'),
  })
  .describe('How the report is written; what the exports hold is declared with each source');
export type ReportSettings = z.output<typeof reportSettingsSchema>;
export type ReportMeasures = Pick<ReportSettings, 'pressure' | 'temperature'>;
