const PATHS = {
  play: 'M7 4.5v15l12.5-7.5z',
  pause: 'M6.5 4.5h4v15h-4zM13.5 4.5h4v15h-4z',
  back: 'M5 5h2.6v14H5zM19 5v14L8.8 12z',
  forward: 'M16.4 5H19v14h-2.6zM5 5l10.2 7L5 19z',
  settings: 'M4 6h9v2H4zM17 6h3v2h-3zM13.5 4h3v6h-3zM4 16h3v2H4zM11 16h9v2h-9zM7.5 14h3v6h-3z',
  notes: 'M11 10h2.2v8H11zM11 6h2.2v2.4H11zM12 2a10 10 0 1 0 .01 0zM12 4a8 8 0 1 1-.01 0z',
  system: 'M12 2a10 10 0 1 0 .01 0zM12 4v16a8 8 0 0 1 0-16z',
  light:
    'M12 7a5 5 0 1 0 .01 0zM11 1h2v3.6h-2zM11 19.4h2V23h-2zM1 11h3.6v2H1zM19.4 11H23v2h-3.6zM4.9 3.5l2.5 2.5L6 7.4 3.5 4.9zM18 16.6l2.5 2.5-1.4 1.4-2.5-2.5zM19.1 3.5l1.4 1.4L18 7.4 16.6 6zM6 16.6L7.4 18l-2.5 2.5-1.4-1.4z',
  dark: 'M10 2.6a9.6 9.6 0 1 0 11.4 11.4A7.8 7.8 0 0 1 10 2.6z',
  loop: 'M6 8.2h9.4V5l5.6 4.4-5.6 4.4v-3.2H8.4v3H6zM18 15.8H8.6V19L3 14.6l5.6-4.4v3.2h7v-3H18z',
  open: 'M3 4h6l2 3h10v4h-2V9H10L8 6H5v11.2L7.4 11H23l-3 9H3z',
  link: 'M10.6 13.4a4.5 4.5 0 0 1 0-6.4l2.8-2.8a4.5 4.5 0 0 1 6.4 6.4l-1.6 1.6-1.4-1.4 1.6-1.6a2.5 2.5 0 0 0-3.6-3.6L12 8.4a2.5 2.5 0 0 0 0 3.6zM13.4 10.6a4.5 4.5 0 0 1 0 6.4l-2.8 2.8a4.5 4.5 0 0 1-6.4-6.4l1.6-1.6 1.4 1.4-1.6 1.6a2.5 2.5 0 0 0 3.6 3.6l2.8-2.8a2.5 2.5 0 0 0 0-3.6z',
  dismiss: 'M6.4 5L12 10.6 17.6 5 19 6.4 13.4 12l5.6 5.6-1.4 1.4L12 13.4 6.4 19 5 17.6 10.6 12 5 6.4z',
} as const

export type IconName = keyof typeof PATHS

/** A drawing beside or instead of a word; the control that holds it carries the name. */
export function Icon({ name }: { readonly name: IconName }) {
  return (
    <svg className="icon" viewBox="0 0 24 24" aria-hidden="true" focusable="false">
      <path d={PATHS[name]} fillRule="evenodd" />
    </svg>
  )
}
