/** Version of the tool, as its package says. */
export const version = '0.1.0';
