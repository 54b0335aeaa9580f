/** A file of more bytes than this is refused before it is read: no case comes near it. Our choice. */
export const MOST_FILE_BYTES = 20_000_000;
