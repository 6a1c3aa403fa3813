// What a thread of the pool loads: the bundle, or the sources, as the program itself does.
import { bundled } from '../../bundle/fresh.mjs';

const bundle = bundled('thread.js');
if (!bundle) (await import('tsx/esm/api')).register();
export const {
  readOne,
  readReceipts,
  makeShare,
  prepareDrawing,
  warmUpDrawing,
  prepareSite,
  askPanel,
  makeCase,
  drawUnits,
  writeWorkbook,
} = await import(bundle ?? './thread.ts');
