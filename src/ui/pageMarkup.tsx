import { renderToString } from 'react-dom/server'
import { soundingDriver } from '../clock/soundingDriver.ts'
import { createPlayer } from '../createPlayer.ts'
import type { Figure } from '../figure/figure.ts'
import { createSpeaker } from '../sound/speaker.ts'
import { seconds } from '../units.ts'
import { Page } from './Page.tsx'

const never = new Promise<never>(() => {})
const nothing = (): void => {}

/**
 * The page as it stands at first, as markup, made at build time: with it the browser lays the page out while the program is
 * still on its way. Styles are written as `data-style`, for the policy allows none in markup (see `layOutMarkup.ts`).
 * @param figures at least one, as the page has them
 */
export function pageMarkup(figures: readonly Figure[]): string {
  const speaker = createSpeaker(
    () => null,
    () => 0,
  )
  const driver = soundingDriver({ now: () => seconds(0), run: nothing, rest: nothing }, speaker)
  const markup = renderToString(
    <Page
      player={createPlayer(figures, driver)}
      stage={never}
      ready={null}
      source={{ speaker, driver }}
      startAnew={nothing}
      mine={() => null}
    />,
  )
  return markup.replaceAll(/(<[^>]*) style="/g, '$1 data-style="')
}
