export const kinds: readonly { readonly example: string; readonly is: string; readonly wrong: string }[];
