import { useLayoutEffect, useState } from 'react'
import { applyPalette } from './applyPalette.ts'
import { useMedia } from './useMedia.ts'

export type ThemeChoice = 'system' | 'light' | 'dark'

/** The colours, as the device has them or as chosen; the choice is kept only as long as the page is open. */
export function useTheme(): {
  readonly choice: ThemeChoice
  readonly dark: boolean
  readonly choose: (choice: ThemeChoice) => void
} {
  const [choice, choose] = useState<ThemeChoice>('system')
  const systemIsDark = useMedia('(prefers-color-scheme: dark)')
  const dark = choice === 'system' ? systemIsDark : choice === 'dark'
  useLayoutEffect(() => applyPalette(document.documentElement, dark ? 'dark' : 'light'), [dark])
  return { choice, dark, choose }
}
