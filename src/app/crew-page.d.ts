/** The phone page as built from `src/crew`, without lists: see `src/crew/template`. */
declare module 'virtual:crew-page' {
  const page: string;
  export default page;
}
