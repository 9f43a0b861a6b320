import type { Problem } from '../problem.ts'
import { shownLine } from './shownLine.ts'

const many = (count: number, one: string): string => `${count} ${count === 1 ? one : `${one}s`}`

/** What is said about opening figures and about links to a view. */
export const openWords = {
  open: 'Open…',
  openHint: 'Open figure files. They can also be dropped anywhere on the page, and their text pasted.',
  groups: { own: 'Opened by you' },
  opened: (title: string) => `Open: ${shownLine(title)}.`,
  openedWithRemarks: (title: string, count: number) =>
    `Open: ${shownLine(title)}. There ${count === 1 ? 'is' : 'are'} ${many(count, 'remark')} on its text.`,
  showRemarks: 'Show remarks',
  dismiss: 'Dismiss',

  refusedTitle: 'Not opened',
  remarksTitle: 'Remarks',
  stays: 'What was on the screen stays.',
  isOpen: 'The figure is open; this is only for you to know.',
  problemCount: (problems: readonly Problem[]) => {
    const errors = problems.filter(({ severity }) => severity === 'error').length
    const remarks = problems.length - errors
    const parts = [errors === 0 ? '' : many(errors, 'problem'), remarks === 0 ? '' : many(remarks, 'remark')]
    return parts.filter((part) => part !== '').join(', ')
  },
  /** "Line 7, column 12, action 2" */
  place: ({ where, severity }: Problem) =>
    `Line ${where.line}, column ${where.column}${where.action === undefined ? '' : `, action ${where.action}`}` +
    (severity === 'warning' ? ' (remark)' : ''),
  fileName: shownLine,
  failed: {
    unreadable: 'This could not be read. Is it a folder, or has the file been moved? Choose the file again.',
    undrawable: 'The text is in order, but the figure cannot be drawn. Make it shorter or simpler and try again.',
    'not loaded': 'A part of the program could not be loaded. Reload the page while you are online, then try again.',
    foreign: 'Only files with a figure, or a figure’s text, can be opened here. Nothing else was done with it.',
  },

  timing: 'Timing',

  link: 'Link',
  linkHint: 'Copy a link to this view',
  copied: 'Copied: a link to this view.',
  copiedOwn: 'Copied: a link to this view. The figure’s whole text is in it.',
  copyYourself: 'This browser did not let the page copy. Copy the link from here:',
  linkTooLong: 'This figure is too long for a link. Send its file, and say which beat you mean.',
  linkRefused: {
    damaged: 'The link is damaged: it was cut or changed on its way. Ask for it again.',
    newer: 'The link was made by a newer Overfoot than this one. Reload the page, or use the newer one.',
    'unknown figure': 'The link is to a figure that is not in this menu. Ask for its file.',
    unfit: 'The link says something that cannot be shown here. Ask for it again, or for the figure’s file.',
  },
} as const
