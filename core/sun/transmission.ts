/** The share of direct sun that a caster lets through on a date: 0 opaque … 1 nothing held back. */
import type { Caster, Tree } from '../../shared/document/caster'
import { type SettingName, type SettingOverrides, settingValue } from '../../shared/settings'

const treeSettings = {
  leaf: { open: 'treeLeafOpen', medium: 'treeLeafMedium', dense: 'treeLeafDense' },
  bare: { open: 'treeBareOpen', medium: 'treeBareMedium', dense: 'treeBareDense' },
} as const satisfies Record<string, Record<Tree['density'], SettingName>>

const coverSettings = { none: 'coverNone', half: 'coverHalf', most: 'coverMost' } as const

/** Whether the tree is in leaf on a date `YYYY-MM-DD`; both end days count, and a season may run over the new year. */
export const isInLeaf = (leaves: Tree['leaves'], date: string): boolean => {
  if (leaves === 'evergreen') return true
  const day = date.slice(5)
  return leaves.from <= leaves.to ? leaves.from <= day && day <= leaves.to : day >= leaves.from || day <= leaves.to
}

export const transmission = (caster: Caster, date: string, settings: SettingOverrides | undefined): number => {
  switch (caster.kind) {
    case 'building':
      return 0
    case 'wall':
      return 1 - caster.solidity
    case 'tree':
      return settingValue(settings, treeSettings[isInLeaf(caster.leaves, date) ? 'leaf' : 'bare'][caster.density])
    case 'cover':
      return typeof caster.light === 'number' ? caster.light : settingValue(settings, coverSettings[caster.light])
  }
}
