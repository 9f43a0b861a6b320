import { useEffect, useRef } from 'react'
import { excerpt } from '../keep/excerpt.ts'
import type { Opened } from '../keep/openFiles.ts'
import type { Problem } from '../problem.ts'
import { labels } from '../words/labels.ts'
import { openWords } from '../words/openWords.ts'
import { problemSentence } from '../words/problemWords.ts'

type Props = { readonly opened: readonly Opened[]; readonly closed: () => void }

/** All that is wrong with what was to be opened, each with its place in the text and how to mend it. */
export function ProblemDialog({ opened, closed }: Props) {
  const dialog = useRef<HTMLDialogElement>(null)
  useEffect(() => {
    const element = dialog.current
    element?.showModal()
    return () => element?.close()
  }, [])
  const refused = opened.some(({ kind }) => kind !== 'shown')
  const title = refused ? openWords.refusedTitle : openWords.remarksTitle
  return (
    <dialog className="notes problems" ref={dialog} aria-label={title} onClose={closed}>
      {/* First, so that the dialog opens at its top: the focus goes here. */}
      <button type="button" className="quiet-button notes-close" onClick={() => dialog.current?.close()}>
        {labels.close}
      </button>
      <h2>{title}</h2>
      <p>{refused ? openWords.stays : openWords.isOpen}</p>
      {opened.map((one, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: two files may have one name, and the list never changes
        <OpenedText key={index} opened={one} />
      ))}
    </dialog>
  )
}

function OpenedText({ opened }: { readonly opened: Opened }) {
  const name = opened.file === '' ? null : <h3>{<bdi>{openWords.fileName(opened.file)}</bdi>}</h3>
  if (!('problems' in opened)) {
    return (
      <section>
        {name}
        <p>{openWords.failed[opened.kind]}</p>
      </section>
    )
  }
  return (
    <section>
      {name}
      <p>{openWords.problemCount(opened.problems)}</p>
      <ol>
        {opened.problems.map((problem, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: the list never changes
          <ProblemItem key={index} problem={problem} text={opened.text} />
        ))}
      </ol>
    </section>
  )
}

function ProblemItem({ problem, text }: { readonly problem: Problem; readonly text: string }) {
  const { rule, mend } = problemSentence(problem)
  const { before, at, after } = excerpt(text, problem.where.line, problem.where.column)
  return (
    <li className={problem.severity === 'error' ? 'problem' : 'problem problem-remark'}>
      <p className="problem-place">{openWords.place(problem)}</p>
      <p>
        <bdi>{rule}</bdi>
      </p>
      {text === '' ? null : (
        <pre className="problem-text" dir="ltr">
          <bdi>{before}</bdi>
          <mark>
            <bdi>{at === '' ? ' ' : at}</bdi>
          </mark>
          <bdi>{after}</bdi>
        </pre>
      )}
      <p>
        <bdi>{mend}</bdi>
      </p>
    </li>
  )
}
