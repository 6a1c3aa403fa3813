import type { IntervalCase } from '../../findings/interval/interval-schema.ts';
import type { PanelFindings } from '../../findings/panel-findings.ts';
import { carriedUnits, UNIT_DAY } from '../../findings/shares/carried-share.ts';
import type { Share } from '../../findings/shares/share.ts';
import { packRows } from '../../packed-rows.ts';
import { unitsWithPage } from '../../report/parts/units-with-page.ts';
import type { Day } from '../../site/day.ts';
import { DRAWING_HEAP, drawTasks, handOver, open, type ReportThreads } from './pool.ts';
import { sharedPlace, takenFrom } from './shared-list.ts';
import type { CaseTask, InputsTask, PanelTask } from './thread.ts';

/** Tasks of the thread, all handed to it at once: warming up, the site file, the panel, the case, the pages. */
const MOST_TASKS = 5;

type SiteFile = InputsTask['site'];
type Joined = Pick<Share, 'units' | 'panel'>;

/** One thread beside the program's own, for the review of a hospital. */
export interface SecondThread extends ReportThreads {
  /** Has the site file read, for what follows. */
  prepareSite(site: SiteFile): Promise<void>;
  /** See `panelFindings`. */
  askPanel(site: SiteFile, joined: Joined): Promise<PanelFindings>;
  /** See `caseOfUnits`. */
  makeCase(site: SiteFile, joined: Joined, records: CaseTask['records'], until: Day): Promise<IntervalCase>;
}

/** Begins the thread, which gets ready while the program reads, and then draws from the same list of pages as the program's own. */
export function secondThread(): SecondThread {
  const pool = open(1, { maxOldGenerationSizeMb: DRAWING_HEAP }, MOST_TASKS);
  pool.run(undefined, { name: 'warmUpDrawing' }).catch(() => undefined);
  return {
    prepareSite: (site) => pool.run(site, { name: 'prepareSite' }),
    askPanel: (site, joined) => pool.run(panelTask(site, joined), { name: 'askPanel' }),
    makeCase(site, joined, { inspections, water }, until) {
      const task: CaseTask = { ...panelTask(site, joined), records: { inspections, water }, until };
      return pool.run(task, { name: 'makeCase' });
    },
    begin(basis, language, onPage) {
      const units = unitsWithPage(basis.review, basis.pagesAsked).map(({ unit }) => unit);
      const place = sharedPlace();
      const task = { ...drawTasks(basis, language)(units), place };
      const done = pool.run(task, { name: 'drawUnits' }).then((pages) => handOver(pages, onPage));
      done.catch(() => undefined);
      return { units: takenFrom(units, place), done };
    },
    end: () => pool.destroy(),
  };
}

const panelTask = (site: SiteFile, { units, panel }: Joined): PanelTask => ({
  site,
  units: carriedUnits(units),
  panel: packRows(panel, UNIT_DAY),
});
