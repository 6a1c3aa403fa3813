import { type ArgsDef, type CommandDef, renderUsage } from 'citty';

/** Help of a command, made from its definition, without terminal codes: the same text in a file, a pipe and a terminal. */
export async function helpText(command: CommandDef<ArgsDef>, parent?: CommandDef<ArgsDef>): Promise<string> {
  const text = await renderUsage(command, parent);
  const codes = new RegExp(`${String.fromCharCode(27)}\\[[0-9;]*m`, 'g');
  return text
    .replace(codes, '')
    .replaceAll('`', '')
    .split('\n')
    .map((line) => line.trimEnd())
    .join('\n')
    .trim();
}
