// The least page that shows anything: pixi's renderer as our stage starts it, as large, and one shape.
import 'pixi.js/unsafe-eval'
import 'pixi.js/graphics'
import { Container, Graphics, WebGLRenderer } from 'pixi.js'

const renderer = new WebGLRenderer()
await renderer.init({
  width: innerWidth,
  height: innerHeight,
  resolution: devicePixelRatio,
  autoDensity: true,
  antialias: true,
  gcActive: false,
  skipExtensionImports: true,
})
document.body.append(renderer.canvas)
const root = new Container()
root.addChild(new Graphics().circle(200, 200, 100).fill('#3050a0').stroke({ color: '#000000', width: 3 }))
renderer.render({ container: root })
window.firstPicture = performance.now()
