/** The plan's colours, as in app.css; canvas cannot read custom properties cheaply. */
export const COLOUR = {
  ink: '#16211d',
  ink2: '#46534d',
  sheet: '#f9faf6',
  white: '#ffffff',
  desk: '#d5dad4',
  rule: '#bcc9cb',
  flag: '#b3154e',
  light: '#b6d487',
  dark: '#82ad5b',
  letterDark: '#4b7c38',
  letterLight: '#dcefb8',
  calm: '#bfda94',
  calmQuiet: '#c9e2a1',
  calmLetter: '#a3c777',
  clay: '#cb9468',
  chalk: '#ffffff',
} as const;
