/**
 * The text as the slip holds it: each line ends in a line feed, whatever the file's machine ends lines with (CR LF, CR).
 * What is drawn and what is written are told apart by their text, so both are of this form.
 */
export const withPlainLineEnds = (text: string): string => text.replace(/\r\n?/g, '\n')
