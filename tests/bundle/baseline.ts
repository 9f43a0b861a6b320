// The least that this page could be made of: React on the page, gsap, and a pixi renderer without pixi's Application.
// It is built by the same settings and only weighed, never run.
import 'pixi.js/unsafe-eval'
import 'pixi.js/graphics'
import gsap from 'gsap'
import { Container, Graphics, WebGLRenderer } from 'pixi.js'
import { createElement } from 'react'
import { createRoot } from 'react-dom/client'

const renderer = new WebGLRenderer()
await renderer.init({ width: 1, height: 1, skipExtensionImports: true })
const scene = new Container()
scene.addChild(new Graphics().moveTo(0, 0).lineTo(1, 1).stroke())
gsap.ticker.add(() => renderer.render(scene))
createRoot(document.body).render(createElement('p'))
