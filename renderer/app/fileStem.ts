/** A site file's name as people say it: without its ending. */
export const fileStem = (fileName: string): string => fileName.replace(/\.slabwright\.json$/i, '')
