/** A file of the sample media, which lie beside the page; null where it does not arrive. */
export async function bringSample(place: string): Promise<File | null> {
  try {
    const answer = await fetch(`${import.meta.env.BASE_URL}sample-media/${place}`);
    return answer.ok ? new File([await answer.blob()], place.slice(place.lastIndexOf('/') + 1)) : null;
  } catch {
    return null;
  }
}
