/**
 * A drawing as a PNG on white, so many pixels wide, base64; undefined where the page cannot draw it. The image
 * comes from the page's own memory: nothing is fetched.
 */
export async function rasterised(svg: string, width: number): Promise<string | undefined> {
  const address = URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }));
  try {
    const image = new Image();
    image.src = address;
    await image.decode();
    const canvas = document.createElement('canvas');
    canvas.width = width;
    canvas.height = Math.max(1, Math.round((width * image.naturalHeight) / Math.max(1, image.naturalWidth)));
    const pen = canvas.getContext('2d');
    if (pen === null) {
      return undefined;
    }
    pen.fillStyle = 'white';
    pen.fillRect(0, 0, canvas.width, canvas.height);
    pen.drawImage(image, 0, 0, canvas.width, canvas.height);
    const data = canvas.toDataURL('image/png');
    return data.startsWith('data:image/png;base64,') ? data.slice(data.indexOf(',') + 1) : undefined;
  } catch {
    return undefined;
  } finally {
    URL.revokeObjectURL(address);
  }
}
