import { type DataTexture, type IUniform, ShaderMaterial, type Vector2, Vector3 } from 'three';

/**
 * Faces show the texture's own numbers: no light, no tone mapping, no conversion of colours, so that a cell on the
 * screen has exactly the colour of its temperature.
 */
export function faceMaterial(field: DataTexture): ShaderMaterial {
  return new ShaderMaterial({
    uniforms: { field: { value: field }, neutral: { value: new Vector3() }, neutralPart: { value: -1 } },
    vertexShader: `
      attribute float part;
      varying vec2 cell;
      varying float kind;
      void main() {
        cell = uv;
        kind = part;
        gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0);
      }`,
    fragmentShader: `
      uniform sampler2D field;
      uniform vec3 neutral;
      uniform float neutralPart;
      varying vec2 cell;
      varying float kind;
      void main() {
        bool isNeutral = abs(kind - neutralPart) < 0.5;
        gl_FragColor = vec4(isNeutral ? neutral : texture2D(field, cell).rgb, 1.0);
      }`,
    toneMapped: false,
    // Lines lie on the faces and win.
    polygonOffset: true,
    polygonOffsetFactor: 1,
    polygonOffsetUnits: 2,
  });
}

/** Share of the depth between the ends of what the camera sees: about three pixels. */
const TOWARDS_EYE = 0.0008;

/** Lines of a width in pixels of the page, their rims smooth over one pixel of the screen. */
export function lineMaterial(resolution: Vector2, pixelRatio: IUniform<number>): ShaderMaterial {
  return new ShaderMaterial({
    uniforms: {
      resolution: { value: resolution },
      pixelRatio,
      ink: { value: new Vector3() },
      paper: { value: new Vector3() },
      strength: { value: 1 },
    },
    vertexShader: `
      attribute vec3 other;
      attribute vec3 size;
      attribute vec3 tone;
      uniform vec2 resolution;
      uniform float pixelRatio;
      uniform float strength;
      varying float cover;
      varying float isPaper;
      varying float halfWidth;
      varying float beside;
      void main() {
        vec4 here = projectionMatrix * modelViewMatrix * vec4(position, 1.0);
        vec4 there = projectionMatrix * modelViewMatrix * vec4(other, 1.0);
        vec2 along = normalize((there.xy - here.xy) * resolution);
        halfWidth = size.y / 2.0;
        float reach = halfWidth + 1.0 / pixelRatio;
        here.xy += vec2(-along.y, along.x) * size.x * reach * 2.0 / resolution;
        beside = size.z * reach;
        // A little towards the eye: a line on an edge lies half beside its own face.
        here.z -= ${TOWARDS_EYE};
        gl_Position = here;
        cover = tone.x * mix(1.0, strength, tone.y);
        isPaper = tone.z;
      }`,
    fragmentShader: `
      uniform vec3 ink;
      uniform vec3 paper;
      uniform float pixelRatio;
      varying float cover;
      varying float isPaper;
      varying float halfWidth;
      varying float beside;
      void main() {
        float inside = clamp((halfWidth - abs(beside)) * pixelRatio + 0.5, 0.0, 1.0);
        gl_FragColor = vec4(mix(ink, paper, isPaper), 1.0) * cover * inside;
      }`,
    toneMapped: false,
    transparent: true,
    premultipliedAlpha: true,
    depthWrite: false,
  });
}
