import type { RecordKind } from '../site/vocabulary.ts';
import { type Guess, likely } from './guess.ts';
import type { ProposedWord } from './map-words.ts';
import type { ProposedColumn } from './proposal.ts';
import type { Vocabulary } from './vocabulary.ts';

/** Texts that may speak of a device: titles and names of files, headers of columns that are read, and those of the rest. */
export interface Told {
  titles: readonly string[];
  read: readonly string[];
  unread: readonly string[];
}

/**
 * Washers and other devices export as sterilizers do: what their names or temperatures say against steam makes the kind a question. One column beside those that are read
 * ("Incubator slot" of an indicator) leaves it likely, where the table shows by itself that it is steam.
 *
 * @param kinds words of the kinds of cycle
 */
export function doubtKind(
  kind: Guess<RecordKind>,
  { titles, read, unread }: Told,
  columns: readonly ProposedColumn[],
  kinds: readonly ProposedWord[],
  vocabulary: Vocabulary,
): Guess<RecordKind> {
  if (kind.value !== 'cycles') return kind;
  const asked = (why: string): Guess<RecordKind> => ({
    ...kind,
    value: undefined,
    options: [...kind.options],
    confidence: 'open',
    why,
  });
  const spokenOf = (texts: readonly string[]): string[] =>
    texts.flatMap((text) => vocabulary.otherDevice(text) ?? []);
  const beside = spokenOf(unread);
  const [device] = [...spokenOf([...titles, ...read]), ...beside];
  const isBeside = beside.length === 1 && beside[0] === device && spokenOf([...titles, ...read]).length === 0;
  if (device !== undefined && !(isBeside && kind.confidence === 'certain' && isSteam(columns, kinds)))
    return asked(`it speaks of "${device}", which is no steam sterilizer`);
  const cold = columns.find(
    ({ field, measure }) =>
      field.startsWith('exposure_temperature') &&
      measure !== undefined &&
      /fits no exposure/.test(measure.why),
  );
  if (cold) return asked(`its temperatures (${cold.samples.join(', ')}) are none at which steam sterilizes`);
  return device === undefined
    ? kind
    : likely(kind.value, `${kind.why}; one column beside them speaks of "${device}"`, kind.options);
}

/** Whether exposures are as hot as those in steam, and their pressure is that of saturated steam or a kind of cycle is a test that only steam sterilizers have. */
function isSteam(columns: readonly ProposedColumn[], kinds: readonly ProposedWord[]): boolean {
  const measureOf = (field: string) => columns.find((column) => column.field === field)?.measure;
  const isHot = ['exposure_temperature_min_c', 'exposure_temperature_max_c'].some(
    (field) => measureOf(field)?.confidence === 'certain',
  );
  const isSaturated = /saturated steam/.test(measureOf('exposure_pressure_kpa')?.why ?? '');
  return (
    isHot &&
    ((isSaturated && measureOf('exposure_pressure_kpa')?.value !== undefined) ||
      kinds.some(({ word, confidence }) => word === 'air_removal_test' && confidence === 'certain'))
  );
}
