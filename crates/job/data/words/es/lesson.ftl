# La hoja del alumno y las respuestas: lo que se calcula con lápiz, la regla en palabras y los números
# que entran en ella.

pupil-title = Hoja del alumno
answers-title = Respuestas a la hoja del alumno
pupil-name = Nombre
pupil-lead = Calcúlelo antes de la colada. Bastan tres cifras; el dorso es para calcular. Un número con un cuadrado delante es su propia respuesta de más arriba.
answers-lead = Calculado con los números impresos en la hoja del alumno, para que concuerde con el lápiz; una pequeña diferencia es del redondeo. Al lado está lo que dice el plan, que cuenta cuánto puede errar cada número.
pupil-answer = Respuesta
answers-in-the-plan = el plan: { $band }
pupil-your-answer = su respuesta { $number }
pupil-then = Después de la colada
pupil-weighed = Pieza pesada, fría
pupil-filled = Segundos de llenado, con reloj
pupil-longest = Lado más largo, medido
pupil-least-sure = ¿Cuál de sus números erró más, y cómo lo mediría mejor?
pupil-foot = Cálculos a lápiz con tablas, sin simulación. Junto al fuego solo quien tiene una tarea; antes valen el maestro y la norma local.

pencil-pattern-length = modelo = pieza acabada × (1 + contracción)
pencil-casting-mass = masa = volumen × densidad
pencil-poured-mass = vertido = piezas × (una pieza + una mazarota) + metal del sistema de colada
pencil-charge = carga = vertido × (1 + parte para la lingotera) ÷ (1 − merma)
pencil-sand-to-fill-the-flask = arena = (interior de la caja − modelos) × densidad de la arena apisonada
pencil-sand-to-have-ready = preparar = arena apisonada × 1,15, por lo que cae y lo que se enrasa
pencil-choke-area = sección = vertido ÷ (densidad × tiempo × descarga × √(2 × gravedad × altura))
pencil-cope-lift = empuje = densidad × (sombra × altura − hueco sobre la junta), dicho por la masa que levantaría
pencil-weight-on-the-cope = peso = golpe × empuje − caja superior, hasta el medio kilo siguiente; nada si es negativo
pencil-freezing-time-of-the-heaviest-section = tiempo = constante × módulo × módulo

pencil-number-above-joint = hueco sobre la junta
pencil-number-casting = una pieza
pencil-number-castings = piezas
pencil-number-constant = constante
pencil-number-contraction = contracción
pencil-number-cope = caja superior apisonada
pencil-number-density = densidad
pencil-number-discharge = descarga
pencil-number-feeder = una mazarota
pencil-number-flask = interior de la caja
pencil-number-head = altura
pencil-number-lift = empuje
pencil-number-liquid-density = densidad, líquido
pencil-number-loss = merma
pencil-number-part = pieza acabada
pencil-number-pattern = modelos
pencil-number-pig-share = parte para la lingotera
pencil-number-poured = vertido
pencil-number-rammed = arena apisonada
pencil-number-running = sistema de colada
pencil-number-section = módulo
pencil-number-shadow = sombra sobre la junta
pencil-number-surge = golpe
pencil-number-time = tiempo
pencil-fall = gravedad
pencil-number-volume = volumen
