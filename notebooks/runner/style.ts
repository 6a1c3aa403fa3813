/** What notebooks need beyond the look of the report's pages. */
export const notebookStyle = `
.sheet { max-width: 74rem; }
pre { background: var(--pale); border-left: 3px solid var(--rule); padding: 0.7rem 0.9rem; overflow-x: auto; margin: 0.9rem 0; font: 0.8rem/1.55 ui-monospace, "SF Mono", Menlo, Consolas, "Liberation Mono", monospace; tab-size: 2; overflow-wrap: normal; }
code { font-family: ui-monospace, "SF Mono", Menlo, Consolas, "Liberation Mono", monospace; font-size: 0.88em; }
pre code { font-size: inherit; }
pre .comment { color: var(--muted); font-style: italic; }
pre .text { color: #1b6a60; }
pre .word { color: var(--accent); font-weight: 600; }
.same { max-width: 44rem; border-left: 4px solid #1c7c70; padding-left: 0.8rem; font-size: 0.93rem; margin: 0.9rem 0; }
.same p { margin: 0; color: var(--muted); font-size: 0.85rem; }
.same ul { list-style: none; display: flex; flex-wrap: wrap; gap: 0 1.6rem; padding: 0; margin: 0; }
.same b { font-variant-numeric: tabular-nums; }
.told { border-left: 4px solid var(--accent); padding-left: 0.8rem; }
.told > :first-child { margin-top: 0; }
.told > :last-child { margin-bottom: 0; }
details pre { margin-top: 0; }
.notebooks { list-style: none; padding: 0; }
.notebooks li { border-top: 1px solid var(--rule); padding: 0.9rem 0; }
.notebooks a { font: 600 1.25rem/1.3 var(--serif); }
@media print { pre { white-space: pre-wrap; font-size: 7pt; } section { break-inside: auto; } }
`;
