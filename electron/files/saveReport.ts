import type { SaveReport } from '../../shared/host'
import type { ReplaceReport } from './replaceFile'

/** What a page is told of a file that was replaced, or was not. */
export const saveReport = (report: ReplaceReport, at: Date, bytes: number, versionKept: boolean): SaveReport =>
  report.replaced
    ? { outcome: 'saved', at: at.toISOString(), bytes, folderSynced: report.folderSynced, versionKept }
    : { outcome: report.sure ? 'notSaved' : 'unsure', reason: report.reason }
