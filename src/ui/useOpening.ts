import { type ComponentProps, type ComponentType, useCallback, useEffect, useRef, useState } from 'react'
import { type Address, followAddress } from '../keep/followAddress.ts'
import { type Opened, openFiles, openPasted } from '../keep/openFiles.ts'
import type { Player } from '../player.ts'
import { openWords } from '../words/openWords.ts'
import type { NoticeText } from './Notice.tsx'
import type { ProblemDialog } from './ProblemDialog.tsx'
import { useDropAndPaste } from './useDropAndPaste.ts'

type Report = {
  /** Comes with the first thing that there is to say. */
  readonly Dialog: ComponentType<ComponentProps<typeof ProblemDialog>>
  readonly opened: readonly Opened[]
  /** A new report is a new dialog. */
  readonly count: number
}

const hasProblems = (one: Opened): boolean => one.kind !== 'shown' || one.problems.length > 0

export type Opening = {
  readonly report: Report | null
  readonly closeReport: () => void
  readonly notice: NoticeText | null
  readonly dismiss: () => void
  readonly openFiles: (files: readonly File[]) => void
  /** A part of the program could not be fetched. */
  readonly notLoaded: () => void
  /** @param fragment null: too long for one */
  readonly link: (fragment: string | null) => void
}

/** Everything that comes into the page from outside, files, texts and links, and what is told about it. */
export function useOpening(player: Player): Opening {
  const [report, setReport] = useState<Report | null>(null)
  const [notice, setNotice] = useState<NoticeText | null>(null)
  /** How often something was said: what comes late does not take the place of what was said since. */
  const said = useRef(0)
  const say = useCallback((next: NoticeText | null) => {
    said.current++
    setNotice(next)
  }, [])
  const address = useRef<Address | null>(null)

  const show = useCallback(
    async (opened: readonly Opened[]) => {
      try {
        const { ProblemDialog: Dialog } = await import('./ProblemDialog.tsx')
        setReport((former) => ({ Dialog, opened, count: (former?.count ?? 0) + 1 }))
      } catch {
        say({ text: openWords.failed['not loaded'] })
      }
    },
    [say],
  )

  const tell = useCallback(
    (opened: readonly Opened[]) => {
      const { title } = player.store.getState().lesson.figure
      const remarked = opened.filter(hasProblems)
      const isShown = opened.some(({ kind }) => kind === 'shown')
      const remarks = opened.flatMap((one) => (one.kind === 'shown' ? one.problems : []))
      setReport(null)
      if (remarked.some(({ kind }) => kind !== 'shown')) {
        say(null)
        void show(remarked)
      } else if (remarks.length > 0) {
        const more = { label: openWords.showRemarks, show: () => void show(remarked) }
        say({ text: openWords.openedWithRemarks(title, remarks.length), more })
      } else say(isShown ? { text: openWords.opened(title), quiet: true } : null)
    },
    [player, show, say],
  )

  const files = useCallback(
    (chosen: readonly File[]) => void (chosen.length > 0 && openFiles(player, chosen).then(tell)),
    [player, tell],
  )
  const text = useCallback(
    (pasted: string) => void openPasted(player, pasted).then((one) => tell([one])),
    [player, tell],
  )
  const foreign = useCallback(() => void show([{ kind: 'foreign', file: '' }]), [show])
  useDropAndPaste({ files, text, foreign })

  useEffect(() => {
    const following = followAddress(player, (why) =>
      say({ text: why === 'not loaded' ? openWords.failed[why] : openWords.linkRefused[why] }),
    )
    address.current = following
    return () => following.stop()
  }, [player, say])

  const link = useCallback(
    (fragment: string | null) => {
      if (fragment === null || address.current === null) {
        say({ text: openWords.linkTooLong })
        return
      }
      const whole = address.current.hold(fragment)
      said.current++
      const mine = said.current
      const sayUnless = (next: NoticeText): void => {
        if (said.current === mine) say(next)
      }
      const { own, session } = player.store.getState()
      const isOwn = own.some(({ figure }) => figure.id === session.figure)
      copy(whole).then(
        () => sayUnless({ text: isOwn ? openWords.copiedOwn : openWords.copied }),
        () => sayUnless({ text: openWords.copyYourself, address: whole }),
      )
    },
    [player, say],
  )

  return {
    report,
    closeReport: useCallback(() => setReport(null), []),
    notice,
    dismiss: useCallback(() => say(null), [say]),
    openFiles: files,
    notLoaded: useCallback(() => say({ text: openWords.failed['not loaded'] }), [say]),
    link,
  }
}

/** Rejects where there is no clipboard (a page that was not served securely), or it is refused. */
const copy = async (text: string): Promise<void> => navigator.clipboard.writeText(text)
