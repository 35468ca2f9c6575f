/** What a file says of itself, as XMP (ISO 16684-1), in the same words as its information dictionary. */
import type { PdfInformation } from './file'

const escaped = (text: string): string =>
  text
    // XML 1.0 knows no other control characters.
    .replace(/[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/gu, '')
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')

const inEveryLanguage = (text: string): string =>
  `<rdf:Alt><rdf:li xml:lang="x-default">${escaped(text)}</rdf:li></rdf:Alt>`

/** What every file says that was made here, up to the version; metadata are not compressed. */
const MADE_HERE = '<pdf:Producer>Petalyard '

/** Whether a PDF was made by this program, by what it says of itself. */
export const isMadeHere = (bytes: Uint8Array): boolean => Buffer.from(bytes).includes(MADE_HERE)

/** The packet; `accessible` names PDF/UA-1 (ISO 14289-1, 5), which only a file that keeps to it may do. */
export function xmpOf(information: PdfInformation, accessible: boolean): string {
  const { title, author, subject, language, producer } = information
  const date = information.date.toISOString().replace(/\.\d+Z$/, 'Z')
  const lines = [
    '<dc:format>application/pdf</dc:format>',
    `<dc:title>${inEveryLanguage(title)}</dc:title>`,
    ...(author === ''
      ? []
      : [`<dc:creator><rdf:Seq><rdf:li>${escaped(author)}</rdf:li></rdf:Seq></dc:creator>`]),
    `<dc:description>${inEveryLanguage(subject)}</dc:description>`,
    `<dc:language><rdf:Bag><rdf:li>${escaped(language)}</rdf:li></rdf:Bag></dc:language>`,
    `<xmp:CreatorTool>${escaped(producer)}</xmp:CreatorTool>`,
    `<xmp:CreateDate>${date}</xmp:CreateDate>`,
    `<xmp:ModifyDate>${date}</xmp:ModifyDate>`,
    `<pdf:Producer>${escaped(producer)}</pdf:Producer>`,
    ...(accessible ? ['<pdfuaid:part>1</pdfuaid:part>'] : []),
  ]
  return [
    '<?xpacket begin="\ufeff" id="W5M0MpCehiHzreSzNTczkc9d"?>',
    '<x:xmpmeta xmlns:x="adobe:ns:meta/">',
    '<rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">',
    '<rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:xmp="http://ns.adobe.com/xap/1.0/" xmlns:pdf="http://ns.adobe.com/pdf/1.3/" xmlns:pdfuaid="http://www.aiim.org/pdfua/ns/id/">',
    ...lines,
    '</rdf:Description>',
    '</rdf:RDF>',
    '</x:xmpmeta>',
    '<?xpacket end="r"?>',
  ].join('\n')
}
