/**
 * Talk on a pasted page: greetings, memories, advertisements. It stays in the file with the page; paper has what
 * concerns the making.
 */

/** What only talk says, whatever stands beside it. */
const NEVER =
  /\b(?:subscrib\w*|newsletters?|social media|hashtags?|my (?:shop|store|channel|feed)|(?:find|see) me on|affiliate|sponsored|blog(?:s|gers?|posts?)?|click here|pop over|share (?:your|a) (?:photos?|pictures?)|tag me|follow me|(?:leave|drop) (?:me )?a comment|thank(?:s| you) for (?:reading|stopping|visiting)|happy (?:hooking|crocheting|making)|cookie policy|privacy policy|advertisements?|ad[- ]free)\b|(?:^|\s)@\w{3}/i

/** What somebody tells of themselves, or greets with. */
const PERSONAL =
  /(?:\b(?:I|I['’](?:m|ve|d|ll)|my|me|we['’]ve|our|hello|hi|hey|welcome|lovelies|friends?|everyone)\b|!\s*$)/i

/** What words of the making have in them: works, measures, stitches, yarn and hook, numbers. */
const MAKING =
  /\d|\b(?:ch(?:ains?)?|sts?|stitch(?:es)?|[hd]?dc|sc|h?tr|dtr|ss|sl|picots?|rounds?|rnds?|rows?|petals?|spaces?|sps?|loops?|lps?|rings?|corners?|joins?|joined|joining|fasten|weave|ends?|block(?:ed|ing)?|turn(?:ing)?|skip|miss|repeat|hooks?|gauge|tension|yarns?|colou?rs?|skeins?|balls?|right side|wrong side|sew|seam|markers?|needles?|tails?|finished|steam|wash|stiffen)\b/i

/** A line without the sentences that only talk; '' where all of it does. */
export function withoutTalk(line: string): string {
  const sentences = line.split(/(?<=[.!?]["”’)]?)\s+(?=["“(]?\p{Lu})/u)
  const kept = sentences.filter(
    (sentence) => !NEVER.test(sentence) && (!PERSONAL.test(sentence) || MAKING.test(sentence)),
  )
  return kept.length === sentences.length ? line : kept.join(' ')
}
