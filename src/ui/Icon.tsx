const PATHS = {
  play: 'M7 4.5v15l12.5-7.5z',
  pause: 'M6.5 4.5h4v15h-4zM13.5 4.5h4v15h-4z',
  back: 'M5 5h2.6v14H5zM19 5v14L8.8 12z',
  forward: 'M16.4 5H19v14h-2.6zM5 5l10.2 7L5 19z',
  settings: 'M4 6h9v2H4zM17 6h3v2h-3zM13.5 4h3v6h-3zM4 16h3v2H4zM11 16h9v2h-9zM7.5 14h3v6h-3z',
  left: 'M15 4.5l1.5 1.5-6 6 6 6-1.5 1.5L7.5 12z',
  right: 'M9 4.5L7.5 6l6 6-6 6L9 19.5l7.5-7.5z',
  show: 'M3 4h5.4v16H3zM9.3 4h5.4v16H9.3zM15.6 4H21v16h-5.4zM5 6v12h1.4V6z',
  teach: 'M3 9V3h6v2H5v4zM15 3h6v6h-2V5h-4zM3 15h2v4h4v2H3zM19 15h2v6h-6v-2h4z',
  explain:
    'M12 2a10 10 0 1 0 .01 0zM12 4a8 8 0 1 1-.01 0zM11 16h2.2v2.2H11zM8.4 9.6a3.6 3.6 0 1 1 5.4 3.1c-.5.3-.7.6-.7 1.2v.6H11v-.8c0-1.2.6-2 1.6-2.7.6-.4.9-.8.9-1.4a1.5 1.5 0 0 0-3 0z',
  down: 'M4.5 8.5L6 7l6 6 6-6 1.5 1.5L12 16z',
  sound:
    'M3 9v6h4l5 5V4L7 9zM14.5 8.5a4 4 0 0 1 0 7v-2a2 2 0 0 0 0-3zM14.5 4.2a8 8 0 0 1 0 15.6v-2.1a6 6 0 0 0 0-11.4z',
  silent:
    'M3 9v6h4l5 5V4L7 9zM15 8.6l1.4-1.4 2.3 2.3 2.3-2.3 1.4 1.4-2.3 2.3 2.3 2.3-1.4 1.4-2.3-2.3-2.3 2.3-1.4-1.4 2.3-2.3z',
  climb: 'M3 20v-5h4.4v5zM9.8 20V10h4.4v10zM16.6 20V4H21v16z',
  more: 'M11 4h2v7h7v2h-7v7h-2v-7H4v-2h7z',
  notes: 'M11 10h2.2v8H11zM11 6h2.2v2.4H11zM12 2a10 10 0 1 0 .01 0zM12 4a8 8 0 1 1-.01 0z',
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
