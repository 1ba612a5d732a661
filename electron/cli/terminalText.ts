/** Text for a terminal without what a name in a file could steer it by: control characters and turned writing. */
export const terminalText = (text: string): string => text.replace(/(?!\n)\p{Cc}|[\u202A-\u202E\u2066-\u2069]/gu, '')
