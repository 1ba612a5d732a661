import type { Slab } from '../../shared/document/slab'
import { defaults, type SettingOverrides, settingValue } from '../../shared/settings'
import type { ResolvedSlab } from '../geometry/resolvedSlab'
import { type Quantity, quantity } from './quantity'

/** Base volume and mass; string-line readings replace the planned depth and show the difference. */
export function baseFigures(slab: ResolvedSlab, source: Slab, settings: SettingOverrides | undefined): Quantity[] {
  const readings = source.baseDepths?.points ?? []
  const planned = source.baseDepthM
  const depth = readings.length ? readings.reduce((sum, r) => sum + r.depthM, 0) / readings.length : planned
  const volume = slab.netAreaM2 * depth
  const density = settingValue(settings, 'baseDensityKgM3')
  const slabId = slab.id
  return [
    ...(readings.length
      ? [
          quantity({
            id: `${slabId}-base-depth`,
            label: 'Mean base depth',
            slabId,
            value: depth,
            unit: 'm',
            formula: `(${readings.map((_, i) => `reading ${i + 1}`).join(' + ')}) ÷ readings`,
            inputs: {
              ...Object.fromEntries(readings.map((r, i) => [`reading ${i + 1}`, [r.depthM, 'm'] as const])),
              readings: [readings.length, '1'],
            },
          }),
          quantity({
            id: `${slabId}-base-difference`,
            label: 'Base against plan',
            slabId,
            value: slab.netAreaM2 * (depth - planned),
            unit: 'm³',
            formula: 'net area × (mean base depth − planned depth)',
            inputs: {
              'net area': [slab.netAreaM2, 'm²'],
              'mean base depth': [depth, 'm'],
              'planned depth': [planned, 'm'],
            },
          }),
        ]
      : []),
    quantity({
      id: `${slabId}-base-volume`,
      label: 'Base volume, compacted',
      slabId,
      value: volume,
      unit: 'm³',
      formula: 'net area × base depth',
      inputs: { 'net area': [slab.netAreaM2, 'm²'], 'base depth': [depth, 'm'] },
    }),
    quantity({
      id: `${slabId}-base-mass`,
      label: 'Base mass',
      slabId,
      value: volume * density,
      unit: 'kg',
      formula: 'base volume × density',
      inputs: { 'base volume': [volume, 'm³'], density: [density, 'kg/m³'] },
      source: defaults.baseDensityKgM3.source,
    }),
  ]
}
