import type { Quantity } from '../../shared/planJson'

/** Works a quantity's formula out from its inputs, by its own text. */
export function evaluateFormula({ formula, inputs }: Quantity): number {
  const names = Object.keys(inputs).sort((a, b) => b.length - a.length)
  let text = formula
  names.forEach((name, i) => {
    text = text.split(name).join(`@${i}@`)
  })
  const bare = text.replace(/@\d+@/g, '').replace(/roundUp|round/g, '')
  if (/[^\s\d.+−×÷(),]/.test(bare)) throw new Error(`no input is named in “${bare}” of “${formula}”`)
  const code = text
    .replaceAll('−', '-')
    .replaceAll('×', '*')
    .replaceAll('÷', '/')
    .replace(/@(\d+)@/g, (_, i) => `(${inputs[names[Number(i)]!]!.value})`)
  const roundUp = (value: number, step: number) => Math.ceil(value / step - 1e-9) * step
  const round = (value: number, step: number) => Math.round(value / step + 1e-6) * step
  return new Function('roundUp', 'round', `return ${code}`)(roundUp, round) as number
}
