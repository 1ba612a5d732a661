import type { AfterTaskName } from '../../core/pours/order/afterTasks'

const words: Readonly<Record<AfterTaskName, string>> = {
  pullForms: 'Pull forms and header',
  sawJoints: 'Saw or open joints',
  washRelease: 'Wash off the release',
  openToFeet: 'Open to feet',
  openToCars: 'Open to cars',
  seal: 'Seal',
}

export const wordTask = (task: AfterTaskName): string => words[task]
