/** The part of the validator's interface that the tests use; the package brings no types. */
declare module 'gltf-validator' {
  export function validateBytes(
    bytes: Uint8Array,
    options?: { readonly maxIssues?: number },
  ): Promise<{
    readonly issues: {
      readonly numErrors: number;
      readonly numWarnings: number;
      readonly messages: readonly { readonly message: string }[];
    };
    readonly info: { readonly totalTriangleCount: number };
  }>;
}
