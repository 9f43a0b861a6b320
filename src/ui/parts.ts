/** The parts that come when they are first asked for: none of them is needed for the first picture. */
export const parts = {
  show: () => import('./ShowSheet.tsx').then(({ ShowSheet }) => ShowSheet),
  table: () => import('./TableDialog.tsx').then(({ TableDialog }) => TableDialog),
  keys: () => import('./KeysDialog.tsx').then(({ KeysDialog }) => KeysDialog),
  faults: () => import('./FaultSheet.tsx').then(({ FaultSheet }) => FaultSheet),
  slow: () => import('./SlowDialog.tsx').then(({ SlowDialog }) => SlowDialog),
  measures: () => import('./MeasuresDialog.tsx').then(({ MeasuresDialog }) => MeasuresDialog),
  sound: () => import('./SoundSheet.tsx').then(({ SoundSheet }) => SoundSheet),
  practice: () => import('./PracticeSheet.tsx').then(({ PracticeSheet }) => PracticeSheet),
  notes: () => import('./NotesDialog.tsx').then(({ NotesDialog }) => NotesDialog),
  marks: () => import('./Marks.tsx').then(({ Marks }) => Marks),
} as const
