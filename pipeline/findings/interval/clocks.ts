export const CLOCKS = ['calendar_days', 'days_of_use', 'cycles'] as const;
export type Clock = (typeof CLOCKS)[number];
export const CLOCK_OUTCOMES = ['failed_test', 'cleanliness_abort'] as const;
export type ClockOutcome = (typeof CLOCK_OUTCOMES)[number];
