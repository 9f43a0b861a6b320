/** The parts that come when they are first asked for: none of them is needed for the first picture. */
export const parts = {
  show: () => import('./ShowSheet.tsx').then(({ ShowSheet }) => ShowSheet),
  table: () => import('./TableDialog.tsx').then(({ TableDialog }) => TableDialog),
  keys: () => import('./KeysDialog.tsx').then(({ KeysDialog }) => KeysDialog),
  notes: () => import('./NotesDialog.tsx').then(({ NotesDialog }) => NotesDialog),
  marks: () => import('./Marks.tsx').then(({ Marks }) => Marks),
} as const
