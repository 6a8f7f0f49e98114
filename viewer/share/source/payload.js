// Reads what viewer/share/pack.py and payload.py wrote: facts as JSON, then the meshes.

export async function readPayload(text) {
  const packed = fromBase64(text);
  const stream = new Blob([packed]).stream().pipeThrough(new DecompressionStream("deflate"));
  const bytes = new Uint8Array(await new Response(stream).arrayBuffer());
  const length = new DataView(bytes.buffer).getUint32(0, true);
  const facts = JSON.parse(new TextDecoder().decode(bytes.subarray(4, 4 + length)));
  return { facts, meshes: readMeshes(facts.meshes, bytes.subarray(4 + length)) };
}

function fromBase64(text) {
  if (Uint8Array.fromBase64) return Uint8Array.fromBase64(text);
  const binary = atob(text);
  const bytes = new Uint8Array(binary.length);
  for (let i = 0; i < binary.length; i++) bytes[i] = binary.charCodeAt(i);
  return bytes;
}

function readMeshes(counts, bytes) {
  let at = 0;
  const wide = (count) => {
    const out = new Uint16Array(count);
    for (let i = 0; i < count; i++) out[i] = bytes[at + i] | (bytes[at + count + i] << 8);
    at += 2 * count;
    return out;
  };
  const sums16 = (count) => {
    const folded = wide(count);
    const out = new Int16Array(count);
    let sum = 0;
    for (let i = 0; i < count; i++) out[i] = sum = (sum + unfold(folded[i])) << 16 >> 16;
    return out;
  };
  const sums8 = (count) => {
    const out = new Int8Array(count);
    let sum = 0;
    for (let i = 0; i < count; i++) out[i] = sum = (sum + unfold(bytes[at + i])) << 24 >> 24;
    at += count;
    return out;
  };
  return counts.map(([vertices, faces]) => {
    const codes = wide(3 * faces);
    const index = new Uint16Array(3 * faces);
    let highest = 0;
    for (let i = 0; i < codes.length; i++) {
      index[i] = highest - codes[i];
      if (codes[i] === 0) highest++;
    }
    const place = [sums16(vertices), sums16(vertices), sums16(vertices)];
    const shade = [sums8(vertices), sums8(vertices), sums8(vertices), sums8(vertices)];
    const fibre = [sums16(vertices), sums16(vertices)];
    return { vertices, index, place, shade, fibre };
  });
}

function unfold(value) {
  return (value >>> 1) ^ -(value & 1);
}
