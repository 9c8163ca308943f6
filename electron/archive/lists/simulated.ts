/**
 * Whether the samples of a capture session `c` were invented by the virtual amplifier, in SQL: it names itself so, and no port of
 * any system has such a name.
 */
export const isSimulated = "c.source GLOB 'virtual amplifier: *'"
