import { palette } from '../charts/palette.ts';

/** The look of what script adds: words of a mark, tools below a picture, the marked unit, the search over units. Nothing of it is printed. */
export const liveStyle = `
.tip { position: fixed; z-index: 5; top: 0; left: 0; width: max-content; max-width: min(22rem, calc(100vw - 1rem)); background: var(--ink); color: #fff; padding: 0.4rem 0.65rem; font-size: 0.86rem; line-height: 1.35; border-radius: 3px; }
.tools { display: flex; flex-wrap: wrap; align-items: center; gap: 0.3rem 1rem; }
.tools label { display: flex; flex-wrap: wrap; align-items: center; gap: 0.2rem 0.5rem; }
.tools input { width: 11rem; max-width: 100%; min-height: 1.6rem; margin: 0; accent-color: var(--accent); touch-action: pan-y; }
.time { display: flex; flex-wrap: wrap; align-items: center; gap: 0.3rem; }
.time output { min-width: 1rem; }
.tools button, .marked button, .finder button { font: inherit; font-size: 0.82rem; color: var(--accent); background: #fff; border: 1px solid #7c8f98; border-radius: 3px; padding: 0.1rem 0.55rem; min-height: 1.6rem; cursor: pointer; }
.tools button:hover, .marked button:hover, .finder button:hover { background: var(--pale); }
.tools button[aria-disabled="true"] { color: #5d6d76; border-color: var(--rule); cursor: default; }
.marked { position: fixed; z-index: 4; left: 50%; bottom: 0.9rem; transform: translateX(-50%); display: flex; flex-wrap: wrap; align-items: center; gap: 0.3rem 0.9rem; max-width: calc(100vw - 2rem); background: #fff; border: 2px solid var(--ink); border-radius: 4px; padding: 0.35rem 0.8rem; font-size: 0.9rem; }
.tip[hidden], .marked[hidden], .finder[hidden] { display: none; }
.finder { display: flex; flex-wrap: wrap; align-items: end; gap: 0.6rem 1.1rem; background: var(--pale); padding: 0.75rem 0.9rem; margin: 0.9rem 0; font-size: 0.9rem; }
.finder label { display: grid; gap: 0.2rem; }
.finder label span { font-size: 0.82rem; color: var(--muted); }
.finder input, .finder select { font: inherit; color: inherit; background: #fff; border: 1px solid #7c8f98; border-radius: 3px; padding: 0.25rem 0.5rem; min-height: 2.1rem; min-width: 0; max-width: 100%; }
.finder button { min-height: 2.1rem; }
.finder output { min-width: 6rem; padding-bottom: 0.35rem; font-weight: 600; }
/* The script holds the search in its place, and the browser is not to do it as well. */
html:has(.finder:not([hidden])) { overflow-anchor: none; }
@media screen {
  .out { display: none; }
  .chart svg.one [data-unit]:not(.lit) { opacity: 0.16; }
  .chart svg [data-unit] { transition: opacity 0.12s; }
  .chart svg text.lit { font-weight: 700; text-decoration: underline; }
  .chart svg .read { stroke: ${palette.ink}; stroke-width: 2.5px; paint-order: normal; }
  .chart svg text.read { stroke-width: 0; text-decoration: underline; }
  .chart svg[data-time] { cursor: ew-resize; }
  .chart svg.pulled { opacity: 0.6; }
  tr.lit > * { background: #fdf1d8; }
  .case.lit h3 { background: #fdf1d8; }
}
@media (prefers-reduced-motion: reduce) { .chart svg [data-unit] { transition: none; } }
@media print { .tip, .tools, .marked, .finder { display: none; } }
`;
