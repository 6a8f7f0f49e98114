// The picture: one draw call a stratum and side; looks and colours of parts live in textures.

import {
  BufferAttribute,
  BufferGeometry,
  Color,
  DataTexture,
  GLSL3,
  LinearSRGBColorSpace,
  Matrix4,
  Mesh,
  NearestFilter,
  OrthographicCamera,
  RawShaderMaterial,
  RGBAFormat,
  Scene,
  UnsignedByteType,
  Vector3,
  WebGLRenderer,
  WebGLRenderTarget,
} from "three";
import { DOOR_FRAGMENT, FILM, PICK_FRAGMENT, SOLID_FRAGMENT, VERTEX } from "./shading.js";

const EYE_MM = 3000;
const REACH_MM = 1200;
const LAYER_MM = 0.35;
const TEXTURE_WIDTH = 64;
const PICK_REACH_PX = 7;
const BONES = 9;

export class Picture {
  constructor(canvas, facts, meshes) {
    this.canvas = canvas;
    this.parts = facts.parts;
    // Chromium's own drawing by software lets single samples of what lies beneath through the
    // seams of a closed surface: it draws twice as large instead and is scaled down.
    this.enlarged = drawsBySoftware();
    this.renderer = new WebGLRenderer({
      canvas,
      antialias: !this.enlarged,
      powerPreference: "low-power",
    });
    this.renderer.outputColorSpace = LinearSRGBColorSpace;
    this.scene = new Scene();
    this.camera = new OrthographicCamera(-1, 1, 1, -1, EYE_MM - REACH_MM, EYE_MM + REACH_MM);
    this.camera.matrixAutoUpdate = false;
    this.pose = { azimuth: 0, elevation: 0, focus: [0, 0, 240], scale: 480 };
    const height = Math.ceil(this.parts.length / TEXTURE_WIDTH);
    this.looks = texture(height);
    this.colours = texture(height);
    this.uniforms = {
      looks: { value: this.looks },
      colours: { value: this.colours },
      stepMm: { value: facts.step_mm },
      fibreStepMm: { value: facts.fibre_step_mm },
      tendonColour: { value: new Color(...facts.looks[0].tendon.map((c) => c / 255)) },
    };
    this.facts = facts;
    this.batches = batched(facts.parts, meshes, this.uniforms);
    for (const batch of this.batches) this.scene.add(batch.mesh);
    this.bounds = boundsOf(facts.parts, meshes, facts.step_mm);
    this.pickTarget = new WebGLRenderTarget(2 * PICK_REACH_PX + 1, 2 * PICK_REACH_PX + 1);
    this.ratio = 1;
    this.waiting = false;
    this.frames = 0;
    this.onDraw = () => {};
    this.setLook(0);
    canvas.addEventListener("webglcontextlost", (event) => event.preventDefault());
    canvas.addEventListener("webglcontextrestored", () => this.redraw());
  }

  setLook(number) {
    const look = this.facts.looks[number];
    this.parts.forEach((part, i) => {
      this.colours.image.data.set([...part.colours[number], part.pattern], 4 * i);
    });
    this.colours.needsUpdate = true;
    this.uniforms.tendonColour.value.setRGB(...look.tendon.map((c) => c / 255));
    this.redraw();
  }

  setGround(rgb) {
    this.renderer.setClearColor(new Color(...rgb), 1);
    this.redraw();
  }

  // looks: function of a part giving [visible, opacity 0..1, highlight 0..1].
  show(look) {
    const data = this.looks.image.data;
    for (const batch of this.batches) {
      batch.mesh.visible = false;
      batch.draw = batch.solid;
    }
    this.parts.forEach((part, i) => {
      const [visible, opacity, highlight] = look(part);
      data.set([visible ? 255 : 0, 255 * opacity, 255 * highlight, 0], 4 * i);
      if (visible) part.batch.mesh.visible = true;
      if (visible && opacity < 1) part.batch.draw = part.batch.door;
    });
    for (const batch of this.batches) batch.mesh.material = batch.draw;
    this.looks.needsUpdate = true;
    this.redraw();
  }

  resize() {
    const { clientWidth: width, clientHeight: height } = this.canvas.parentElement;
    if (!width || !height) return;
    this.width = width;
    this.height = height;
    this.fullRatio = this.enlarged ? 2 : Math.min(window.devicePixelRatio || 1, 2);
    this.#setRatio(this.fullRatio);
    this.redraw();
  }

  #setRatio(ratio) {
    this.ratio = ratio;
    this.renderer.setPixelRatio(ratio);
    this.renderer.setSize(this.width, this.height, false);
  }

  // While it turns on a slow device the picture is drawn with fewer points.
  setMoving(moving) {
    if (!this.width) return;
    const slow = this.frameMs > 50;
    this.sparing = moving && this.frameMs > 120;
    const wanted = moving && slow ? Math.max(0.6, this.fullRatio * 0.5) : this.fullRatio;
    if (!moving) this.lastFrame = 0;
    if (wanted !== this.ratio) this.#setRatio(wanted);
    this.redraw();
  }

  redraw() {
    if (this.waiting) return;
    this.waiting = true;
    requestAnimationFrame((now) => {
      this.waiting = false;
      if (this.lastFrame) this.frameMs = 0.7 * (this.frameMs || 16) + 0.3 * (now - this.lastFrame);
      this.lastFrame = now;
      this.draw();
    });
  }

  draw() {
    if (!this.width) return;
    this.#placeCamera();
    const spared = this.sparing ? this.#deepBatches() : [];
    for (const batch of spared) batch.mesh.visible = false;
    this.renderer.render(this.scene, this.camera);
    for (const batch of spared) batch.mesh.visible = true;
    this.frames++;
    if (!this.firstAt) {
      this.renderer.getContext().finish();
      this.firstAt = performance.now();
    }
    this.onDraw();
  }

  // What lies far beneath the outermost stratum of its side, and is no bone: left out while a
  // very slow device turns the picture, and drawn again when it rests.
  #deepBatches() {
    const shown = this.batches.filter((batch) => batch.mesh.visible);
    const outer = (side) =>
      Math.min(...shown.filter((b) => b.side === side).map((b) => b.stratum));
    const limit = { left: outer("left") + 3, right: outer("right") + 3, "": Infinity };
    return shown.filter((b) => b.stratum > limit[b.side] && b.stratum !== BONES && b.draw === b.solid);
  }

  axes() {
    const a = (this.pose.azimuth * Math.PI) / 180;
    const e = (this.pose.elevation * Math.PI) / 180;
    const back = new Vector3(Math.sin(a) * Math.cos(e), Math.cos(a) * Math.cos(e), Math.sin(e));
    const up = new Vector3(-Math.sin(a) * Math.sin(e), -Math.cos(a) * Math.sin(e), Math.cos(e));
    return { right: new Vector3().crossVectors(up, back), up, back };
  }

  #placeCamera() {
    const { right, up, back } = this.axes();
    const half = this.pose.scale;
    const wide = (half * this.width) / this.height;
    Object.assign(this.camera, { left: -wide, right: wide, top: half, bottom: -half });
    this.camera.updateProjectionMatrix();
    const eye = new Vector3(...this.pose.focus).addScaledVector(back, EYE_MM);
    const matrix = new Matrix4().makeBasis(right, up, back).setPosition(eye);
    this.camera.matrix.copy(matrix);
    this.camera.matrixWorld.copy(matrix);
    this.camera.matrixWorldInverse.copy(matrix).invert();
  }

  orbit(dx, dy) {
    this.pose.azimuth = ((((this.pose.azimuth + dx + 180) % 360) + 360) % 360) - 180;
    this.pose.elevation = Math.min(90, Math.max(-90, this.pose.elevation + dy));
    this.redraw();
  }

  pan(dx, dy) {
    const { right, up } = this.axes();
    const mm = (2 * this.pose.scale) / this.height;
    const focus = new Vector3(...this.pose.focus);
    focus.addScaledVector(right, -dx * mm).addScaledVector(up, dy * mm);
    this.pose.focus = focus.clampLength(0, 1000).toArray();
    this.redraw();
  }

  zoom(factor, x = this.width / 2, y = this.height / 2) {
    const before = this.pose.scale;
    this.pose.scale = Math.min(900, Math.max(12, before / factor));
    const moved = 1 - before / this.pose.scale;
    this.pan((x - this.width / 2) * moved, (y - this.height / 2) * moved);
  }

  // The pose that shows these parts from a direction.
  framing(numbers, azimuth = this.pose.azimuth, elevation = this.pose.elevation, least = 40) {
    const kept = this.pose;
    this.pose = { ...kept, azimuth, elevation };
    const { right, up, back } = this.axes();
    this.pose = kept;
    const low = [Infinity, Infinity, Infinity];
    const high = [-Infinity, -Infinity, -Infinity];
    for (const n of numbers)
      for (let corner = 0; corner < 8; corner++) {
        const p = new Vector3(...[0, 1, 2].map((k) => this.bounds[n][(corner >> k) & 1][k]));
        [right, up, back].forEach((axis, k) => {
          const d = p.dot(axis);
          low[k] = Math.min(low[k], d);
          high[k] = Math.max(high[k], d);
        });
      }
    if (!Number.isFinite(low[0])) return { ...kept, azimuth, elevation };
    const focus = new Vector3();
    [right, up, back].forEach((axis, k) => focus.addScaledVector(axis, (low[k] + high[k]) / 2));
    const aspect = this.width / this.height || 1;
    const tall = (high[1] - low[1]) / 2;
    const wide = (high[0] - low[0]) / 2 / aspect;
    return {
      azimuth,
      elevation,
      focus: focus.toArray(),
      scale: Math.max(tall, wide, least) * 1.06,
    };
  }

  flyTo(pose, calm) {
    cancelAnimationFrame(this.flight);
    if (calm) {
      this.pose = { ...pose };
      this.redraw();
      return;
    }
    const from = this.pose;
    const turn = ((((pose.azimuth - from.azimuth + 180) % 360) + 360) % 360) - 180;
    const began = performance.now();
    const tick = (now) => {
      const t = Math.min(1, Math.max(0, now - began) / 380);
      const s = t * t * (3 - 2 * t);
      const mix = (a, b) => a + (b - a) * s;
      this.pose = {
        azimuth: from.azimuth + turn * s,
        elevation: mix(from.elevation, pose.elevation),
        focus: from.focus.map((v, k) => mix(v, pose.focus[k])),
        scale: Math.exp(mix(Math.log(from.scale), Math.log(pose.scale))),
      };
      if (t === 1) this.pose = { ...pose };
      this.redraw();
      if (t < 1) this.flight = requestAnimationFrame(tick);
    };
    this.flight = requestAnimationFrame(tick);
  }

  // The part at a place of the canvas (CSS pixels), -1 for none. Fingers are thick: the
  // nearest part within a few pixels counts.
  pick(x, y) {
    const reach = PICK_REACH_PX;
    const size = 2 * reach + 1;
    this.#placeCamera();
    this.camera.setViewOffset(this.width, this.height, x - reach, y - reach, size, size);
    for (const batch of this.batches) batch.mesh.material = batch.pick;
    const clear = this.renderer.getClearColor(new Color());
    this.renderer.setClearColor(0, 0);
    this.renderer.setRenderTarget(this.pickTarget);
    this.renderer.clear();
    this.renderer.render(this.scene, this.camera);
    const pixels = new Uint8Array(4 * size * size);
    this.renderer.readRenderTargetPixels(this.pickTarget, 0, 0, size, size, pixels);
    this.renderer.setRenderTarget(null);
    this.renderer.setClearColor(clear, 1);
    for (const batch of this.batches) batch.mesh.material = batch.draw;
    this.camera.clearViewOffset();
    this.redraw();
    let best = -1;
    let nearest = Infinity;
    for (let row = 0; row < size; row++)
      for (let column = 0; column < size; column++) {
        const at = 4 * (row * size + column);
        const id = pixels[at] + 256 * pixels[at + 1] - 1;
        const away = Math.hypot(row - reach, column - reach);
        if (id >= 0 && away < nearest) {
          nearest = away;
          best = id;
        }
      }
    return best < this.parts.length ? best : -1;
  }
}

function drawsBySoftware() {
  const asked = document.createElement("canvas").getContext("webgl2");
  const told = asked?.getExtension("WEBGL_debug_renderer_info");
  const name = told ? String(asked.getParameter(told.UNMASKED_RENDERER_WEBGL)) : "";
  asked?.getExtension("WEBGL_lose_context")?.loseContext();
  return name.includes("SwiftShader");
}

function texture(height) {
  const data = new Uint8Array(4 * TEXTURE_WIDTH * height);
  const made = new DataTexture(data, TEXTURE_WIDTH, height, RGBAFormat, UnsignedByteType);
  made.magFilter = made.minFilter = NearestFilter;
  return made;
}

function batched(parts, meshes, uniforms) {
  const groups = new Map();
  for (const part of parts) {
    const key = `${part.stratum} ${part.side} ${part.pattern === FILM}`;
    if (!groups.has(key)) groups.set(key, []);
    groups.get(key).push(part);
  }
  return [...groups.values()].map((members) => {
    const batch = { stratum: members[0].stratum, film: members[0].pattern === FILM, side: members[0].side };
    const own = { ...uniforms, away: { value: (batch.stratum * LAYER_MM) / REACH_MM } };
    const material = (fragment) =>
      new RawShaderMaterial({
        glslVersion: GLSL3,
        vertexShader: VERTEX,
        fragmentShader: fragment,
        uniforms: own,
      });
    batch.solid = material(SOLID_FRAGMENT);
    // A film covers half the picture: a dot pattern over it would be all one sees.
    batch.door = material(batch.film ? SOLID_FRAGMENT : DOOR_FRAGMENT);
    batch.door.transparent = batch.film;
    batch.door.depthWrite = !batch.film;
    batch.pick = material(PICK_FRAGMENT);
    batch.mesh = new Mesh(merged(members, meshes), batch.solid);
    // Outside first: what it covers is then not shaded at all.
    batch.mesh.renderOrder = batch.stratum;
    batch.mesh.frustumCulled = false;
    batch.mesh.matrixAutoUpdate = false;
    for (const part of members) part.batch = batch;
    return batch;
  });
}

function merged(members, meshes) {
  let vertices = 0;
  let corners = 0;
  for (const part of members) {
    vertices += meshes[part.mesh].vertices;
    corners += meshes[part.mesh].index.length;
  }
  const place = new Int16Array(4 * vertices);
  const shade = new Int8Array(4 * vertices);
  const fibre = new Int16Array(2 * vertices);
  const index = new Uint32Array(corners);
  let v = 0;
  let c = 0;
  for (const part of members) {
    const mesh = meshes[part.mesh];
    const turn = part.mirrored ? -1 : 1;
    for (let i = 0; i < mesh.index.length; i += 3) {
      // A mirrored mesh turns its winding, so that outside stays outside.
      index[c + i] = v + mesh.index[i];
      index[c + i + 1] = v + mesh.index[i + (part.mirrored ? 2 : 1)];
      index[c + i + 2] = v + mesh.index[i + (part.mirrored ? 1 : 2)];
    }
    c += mesh.index.length;
    for (let i = 0; i < mesh.vertices; i++, v++) {
      place[4 * v] = turn * mesh.place[0][i];
      place[4 * v + 1] = mesh.place[1][i];
      place[4 * v + 2] = mesh.place[2][i];
      place[4 * v + 3] = part.number;
      shade[4 * v] = turn * mesh.shade[0][i];
      shade[4 * v + 1] = mesh.shade[1][i];
      shade[4 * v + 2] = mesh.shade[2][i];
      shade[4 * v + 3] = mesh.shade[3][i];
      fibre[2 * v] = mesh.fibre[0][i];
      fibre[2 * v + 1] = mesh.fibre[1][i];
    }
  }
  const geometry = new BufferGeometry();
  for (const [name, array, size, normalised] of [
    ["place", place, 4, false],
    ["shade", shade, 4, true],
    ["fibre", fibre, 2, false],
  ])
    geometry.setAttribute(name, new BufferAttribute(array, size, normalised));
  geometry.setIndex(new BufferAttribute(index, 1));
  geometry.setDrawRange(0, corners);
  return geometry;
}

function boundsOf(parts, meshes, step) {
  return parts.map((part) => {
    const low = [];
    const high = [];
    for (let k = 0; k < 3; k++) {
      let a = 32767;
      let b = -32768;
      for (const value of meshes[part.mesh].place[k]) {
        if (value < a) a = value;
        if (value > b) b = value;
      }
      low.push(a * step);
      high.push(b * step);
    }
    if (part.mirrored) [low[0], high[0]] = [-high[0], -low[0]];
    return [low, high];
  });
}
