/** The little of svgdom that svg.ts asks for; the package has no types of its own. */
declare module 'svgdom' {
  export function createSVGWindow(): Window & { document: Document };
}
