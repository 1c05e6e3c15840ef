import { type DataTexture, ShaderMaterial, type Vector2, Vector3 } from 'three';

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

/** Lines of a width in pixels of the page. */
export function lineMaterial(resolution: Vector2): ShaderMaterial {
  return new ShaderMaterial({
    uniforms: { resolution: { value: resolution }, ink: { value: new Vector3() }, strength: { value: 1 } },
    vertexShader: `
      attribute vec3 other;
      attribute vec4 style;
      uniform float strength;
      uniform vec2 resolution;
      varying float cover;
      void main() {
        vec4 here = projectionMatrix * modelViewMatrix * vec4(position, 1.0);
        vec4 there = projectionMatrix * modelViewMatrix * vec4(other, 1.0);
        vec2 along = normalize((there.xy - here.xy) * resolution);
        vec2 across = vec2(-along.y, along.x) * style.x;
        here.xy += across * style.y / resolution;
        gl_Position = here;
        cover = style.z * mix(1.0, strength, style.w);
      }`,
    fragmentShader: `
      uniform vec3 ink;
      varying float cover;
      void main() {
        gl_FragColor = vec4(ink * cover, cover);
      }`,
    toneMapped: false,
    transparent: true,
    premultipliedAlpha: true,
    depthWrite: false,
  });
}
