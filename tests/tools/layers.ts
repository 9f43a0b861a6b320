/** A folder or a top-level file of `src/`, without its ending. */
export type Layer = (typeof LAYERS)[number]

/** Each may import from itself and from those before it. */
export const LAYERS = [
  'units',
  'problem',
  'dance',
  'figure',
  'timing',
  'transfer',
  'pose',
  'scene',
  'words',
  'clock',
  'session',
  'sound',
  'stage',
  'screen',
  'player',
  'createPlayer',
  'conductor',
  'practice',
  'along',
  'keep',
  'export',
  'ui',
  'install',
  'cli',
  'main',
] as const

/** The last layer that must run without a browser: what `tsconfig.core.json` has to hold. */
export const LAST_CORE_LAYER: Layer = 'sound'

/** Layers that may import less than everything before them, with the reason. */
export const NARROWER: Readonly<Record<string, { readonly may: readonly string[]; readonly reason: string }>> = {
  stage: {
    may: ['units', 'problem', 'scene'],
    reason: 'the stage draws a scene and knows no beats and no figures',
  },
  install: {
    may: [],
    reason: 'install runs before anything is installed, and needs only Node',
  },
  cli: {
    may: ['units', 'problem', 'dance', 'figure', 'timing', 'transfer', 'pose', 'scene', 'words', 'install'],
    reason: 'the command line runs without a browser, on the core up to words',
  },
  serve: {
    may: ['units', 'problem', 'dance', 'figure', 'install'],
    reason: 'serve works at build time and needs only what a figure file needs',
  },
}

/** Ends of the line: they start programs, and nobody imports them. */
export const PROGRAMS: readonly string[] = ['cli', 'main', 'serve']

/** The one file that knows gsap. It needs a browser, so the core must not reach it. */
export const GSAP_FILE = 'src/clock/gsapDriver.ts'
/** The one file that knows Web Audio, likewise. */
export const AUDIO_FILE = 'src/sound/speaker.ts'

/** Who may import a package (its subpaths included): layers or single files. What is not listed may not be imported. */
export const PACKAGES: Readonly<Record<string, readonly string[]>> = {
  'pixi.js': ['stage'],
  react: ['ui', 'main'],
  'react-dom': ['ui', 'main'],
  gsap: [GSAP_FILE],
  yaml: ['figure'],
  valibot: ['figure'],
  zustand: ['session', 'player', 'createPlayer', 'conductor', 'practice', 'along', 'ui'],
  'virtual:figures': ['ui', 'main'],
  vite: ['serve', 'cli'],
  'node:': ['install', 'serve', 'cli'],
}

/** 350 lines are the end of a file; under 200 is the aim. */
export const LINE_LIMIT = 350

/** Vocabularies and entries: files that are not named after one thing. */
export const NAMED_AFTER_NOTHING: readonly string[] = [
  'src/units.ts',
  'src/main.tsx',
  'src/serve/start.mjs',
  'src/stage/earlyContext.ts',
]
