/** The largest site the planner takes; beyond each of these: one stop-problem that names the limit. */
export const limits = {
  fileBytes: 64 * 1024 * 1024,
  verticesPerRing: 5_000,
  verticesPerSite: 20_000,
  casters: 2_000,
  pours: 200,
  extentM: 2_000,
  /** Entries of any one list in the file. */
  listRows: 20_000,
  assetPixels: 2_400,
  assetBytes: 3 * 1024 * 1024,
} as const
