/** The words of the door: why a file cannot be taken as a site. */

import type { doorCodes, Finding } from '../../shared/problem'
import { capitalize } from '../units/capitalize'
import type { Measures } from '../units/measures'
import { printNumber } from '../units/printNumber'
import { type FieldPlace, tellField } from './fieldWords'
import { printField } from './printField'
import type { Told, Wording } from './wording'

const placeOf = (finding: Finding): FieldPlace => tellField(finding.field ?? '')

/** `Slab 1, border 2: the width`; of the site itself: `The unit system`. */
const subjectOf = (finding: Finding): string => {
  const { owner, field } = placeOf(finding)
  const named = field.startsWith('“') || /\d$/.test(field) ? field : `the ${field}`
  return owner === 'the site' ? capitalize(named) : `${capitalize(owner)}: ${named}`
}

/** `asked`: what it was, where it stands in no file. */
const misread = (finding: Finding, found: unknown, asked: 'day' | 'time', why: string): string => {
  const words = found === '' ? 'empty' : `“${found}”, ${why}`
  if (finding.field !== undefined) return `${subjectOf(finding)} is ${words}.`
  return found === '' ? `No ${asked} is given.` : `The ${asked} asked for is ${words}.`
}

const outOfRange = ({ finding, values, print }: Told): string => {
  const place = placeOf(finding)
  const subject = subjectOf(finding)
  if ('count' in values) {
    const bound = 'least' in values ? `at least ${values.least}` : `at most ${values.most}`
    return `${subject} has ${values.count} ${values.count === 1 ? 'entry' : 'entries'}; it needs ${bound}.`
  }
  if ('letters' in values)
    return `${subject} is ${printNumber(Number(values.letters), 0)} letters long; ${printNumber(Number(values.most), 0)} is the most.`
  const show = (value: unknown) =>
    Number(value) === 0 ? '0' : printField(Number(value), place.key, place.isSetting, print)
  const bound =
    'above' in values
      ? `more than ${show(values.above)}`
      : 'min' in values
        ? `${show(values.min)} or more`
        : `${show(values.max)} or less`
  return `${subject} is ${printField(Number(values.value), place.key, place.isSetting, print)}; it must be ${bound}.`
}

const kinds: Readonly<Record<string, string>> = {
  number: 'a number',
  wholeNumber: 'a whole number',
  string: 'text',
  boolean: 'true or false',
  list: 'a list',
  group: 'a group of fields',
  nothing: 'empty',
}

/** A drawing wider than this (m) is told as wider than this: its figure means nothing. */
const toldM = 100_000

const limitWords: Readonly<Record<string, (found: number, most: number, print: Measures) => string>> = {
  verticesPerRing: (found, most) => `One outline or line has ${count(found)} corners; the most is ${count(most)}.`,
  verticesPerSite: (found, most) => `The site has ${count(found)} corners in all; the most is ${count(most)}.`,
  casters: (found, most) => `The site has ${count(found)} shade casters; the most is ${count(most)}.`,
  pours: (found, most) => `The site has ${count(found)} accepted pours; the most is ${count(most)}.`,
  extentM: (found, most, print) =>
    `The drawing is ${found > toldM ? `more than ${print.length(toldM)}` : print.length(found)} across; the most is ${print.length(most)}.`,
  assetPixels: (found, most) => `A picture is ${count(found)} pixels across; the most is ${count(most)}.`,
  assetBytes: (found, most) => `A picture takes ${count(found)} bytes; the most is ${count(most)}.`,
  listRows: (found, most) => `One list has ${count(found)} entries; the most is ${count(most)}.`,
}

const limitHints: Readonly<Record<string, string>> = {
  verticesPerRing: 'Draw it with arcs or with fewer corners.',
  verticesPerSite: 'Draw it with arcs or with fewer corners, or split the job into two sites.',
  casters: 'Leave out what throws no shade on the slabs.',
  pours: 'Split the job into two sites.',
  extentM: 'Look for a corner that lies far away, or split the job into two sites.',
  assetPixels: 'Make the picture smaller and put it under the plan again.',
  assetBytes: 'Make the picture smaller and put it under the plan again.',
  listRows: 'Split the job into two sites.',
}

const count = (value: number): string => printNumber(value, 0)

const targets: Readonly<Record<string, string>> = {
  ring: 'outline or opening',
  log: 'log entry',
}

export const doorWordings: Record<(typeof doorCodes)[number], Wording> = {
  fileEmpty: () => ({ message: 'The file is empty.', hint: 'Open the last kept copy.' }),
  fileTooLarge: ({ values }) => ({
    message: `The file takes ${count(Number(values.bytes))} bytes; the most is ${count(Number(values.limitBytes))}.`,
    hint: 'Make the pictures under the plan smaller.',
  }),
  notText: () => ({
    message: 'The file is not text; it may be a picture or a program.',
    hint: 'Open a site file, which ends in .slabwright.json.',
  }),
  notJson: ({ values }) => ({
    message:
      values.found === ''
        ? `The file ends too early, at line ${values.line}, column ${values.column}.`
        : `The file cannot be read at line ${values.line}, column ${values.column}, from “${values.found}” on.`,
    hint: 'Open the last kept copy, or mend that line in a text editor.',
  }),
  wrongFormat: ({ values }) => ({
    message: `This is not a Slabwright site file${'found' in values ? `; it calls itself “${values.found}”` : ''}.`,
    hint: 'Open a site file, which ends in .slabwright.json.',
  }),
  newerVersion: ({ values }) => ({
    message: `The file has version ${values.found}; this program reads up to version ${values.reads}.`,
    hint: 'Open it with a newer release. Nothing in it was changed.',
  }),
  missingField: ({ finding }) => {
    const { owner, field } = placeOf(finding)
    return { message: `${capitalize(owner)} has no ${field}.`, hint: 'Add it to the file.' }
  },
  unknownField: ({ finding }) => {
    const { owner, key } = placeOf(finding)
    return {
      message: `${capitalize(owner)} has a field “${key}” that a site file does not know.`,
      hint: 'Look for a slip in its name, or take it out.',
    }
  },
  wrongType: ({ finding, values }) => {
    const expected = kinds[String(values.expected)] ?? String(values.expected)
    const found =
      values.kind === 'string' && 'found' in values
        ? `the text “${values.found}”`
        : (values.found ?? kinds[String(values.kind)] ?? 'something else')
    return { message: `${subjectOf(finding)} must be ${expected}, not ${found}.` }
  },
  badNumber: ({ finding, values }) => ({
    message: `${subjectOf(finding)} is “${values.found}”, which is not a number to work with.`,
    hint: 'Write it in plain digits.',
  }),
  outOfRange: told => ({ message: outOfRange(told) }),
  notOneOf: ({ finding, values }) => ({
    message: `${subjectOf(finding)} is “${values.found}”, which is not a choice here.`,
    ...(values.choices === ''
      ? {}
      : {
          hint: `Choose from: ${values.choices}${'orKind' in values ? `; or give ${kinds[String(values.orKind)]}` : ''}.`,
        }),
  }),
  badId: ({ finding, values }) => ({
    message: `${subjectOf(finding)} is “${values.found}”, which cannot be an id.`,
    hint: 'An id is small letters and a number, such as e12.',
  }),
  repeatedId: ({ finding, values }) => {
    const { owner } = placeOf(finding)
    return {
      message: `The id “${values.id}” stands twice; the second time at ${owner}.`,
      hint: 'Give the second one an id of its own.',
    }
  },
  danglingId: ({ finding, values }) => {
    const target = targets[String(values.target)] ?? values.target
    const { owner, field } = placeOf(finding)
    const from = / \d+$/.test(field) || owner === 'the site' ? `${owner}, ${field}` : owner
    return {
      message: `${capitalize(from)}: there is no ${target} “${values.id}”.`,
      hint: 'Name one that is there, or leave it out.',
    }
  },
  limitExceeded: ({ values, print }) => {
    const limit = String(values.limit)
    const words = limitWords[limit]
    if (words === undefined) throw new Error(`no words for the limit ${limit}`)
    return {
      message: words(Number(values.found), Number(values.most), print),
      ...(limitHints[limit] === undefined ? {} : { hint: limitHints[limit] }),
    }
  },
  moreFaults: ({ values }) => ({
    message: `The file has ${count(Number(values.count))} more faults like these.`,
    hint: 'Mend these first, then open it again.',
  }),
  unknownZone: ({ values }) => ({
    message: `Place: the time zone “${values.found}” is not known.`,
    hint: 'Write a name such as America/Denver.',
  }),
  badDate: ({ finding, values }) => ({
    message: misread(finding, values.found, 'day', 'which is not in the calendar'),
    hint: 'Write year, month and day as 2026-02-28, or month and day as 02-28.',
  }),
  badTime: ({ finding, values }) => ({
    message: misread(finding, values.found, 'time', 'which is not a time of day'),
    hint: 'Write hours and minutes, such as 06:30.',
  }),
}
