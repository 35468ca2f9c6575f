/** The page's script in one piece, as scripts/phone-script.mjs builds it. */
declare module 'virtual:phone-script' {
  const script: string
  export default script
}
