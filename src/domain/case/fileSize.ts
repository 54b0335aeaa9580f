/** A file of more bytes than this is refused before it is read: no case comes near it. Our choice. */
export const MOST_FILE_BYTES = 20_000_000;
/** The same for a backup of all cases: some hundreds of long ones. Our choice; browsers hold no text of twice that. */
export const MOST_BACKUP_BYTES = 250_000_000;
/** The same for settings of the practice or a visit, in letters; the longest of ours has some 60,000. Our choice. */
export const MOST_SETTINGS_LETTERS = 2_000_000;
