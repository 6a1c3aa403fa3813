import type { BuildOptions } from 'esbuild';

export const root: string;
export const dist: string;
export const settings: BuildOptions & { write?: boolean };
