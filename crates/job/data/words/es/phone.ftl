### La tarjeta de taller en el teléfono.

## The page on which a phone is paired

phone-welcome = Emparejar este teléfono
phone-welcome-first = 1. El certificado del taller
phone-welcome-certificate = Su teléfono aún no conoce el ordenador de su taller. Instale una vez el certificado del taller: solo responde por direcciones de redes locales.
phone-welcome-install = Descargar el certificado
phone-welcome-compare = Antes de confiar en él, compare su huella (SHA-256), tal como la muestra el teléfono, con la de la terminal. Esta página puede ser engañada, la terminal no:
phone-welcome-how = Abra el archivo descargado, instálelo como certificado de una autoridad en los ajustes del teléfono y, donde los ajustes lo pidan, active la confianza total. Luego abra de nuevo esta dirección: ya no aparece ningún aviso.
phone-welcome-then = 2. El código de la terminal
phone-welcome-code = Ocho cifras, tal como están en la terminal
phone-welcome-name = Cómo llama a este teléfono (puede quedar vacío)
phone-welcome-pair = Emparejar
phone-wrong-code = Ese no es el código. Intentos que quedan: { $left }.
phone-no-code = Ya no vale ningún código: se usó, tiene más de diez minutos o se probó mal demasiadas veces. Haga uno nuevo en la terminal: oddside phones add

## In the terminal

phone-serve-open = para teléfonos: { $address }
phone-serve-code = código para emparejar un teléfono, válido { $minutes } minutos: { $code }
phone-serve-print = huella del certificado del taller, para comparar con la que muestra el teléfono: { $print }
phone-serve-who = Cualquiera en esta red puede intentar entrar; solo se responde a los teléfonos emparejados (oddside phones list). Ctrl-C lo cierra.
phone-none-paired = ningún teléfono está emparejado
phone-removed = { $name } ya no tiene acceso
phone-head-name = teléfono
phone-head-paired = emparejado

## Whoever is not paired

phone-not-paired = Este teléfono no está emparejado, o ya no lo está.
phone-not-paired-hint = Lo anotado se guarda en él; emparéjelo de nuevo para enviarlo.
phone-pair = Emparejar este teléfono

## The bench card

phone-heap = En el montón
phone-weigh = Pesar
phone-test = Ensayar
phone-ready = ¿Listo?
phone-pour-goes-on = La colada sigue
phone-which-job = ¿Qué pieza?
phone-other-job = Otra pieza
phone-no-jobs = Todavía no hay nada en esta carpeta.
phone-back-to-heap = Volver al montón
phone-back = Atrás
phone-next = Siguiente
phone-stop = STOP
phone-server-gone = Oddside no responde: la tarjeta muestra el último plan; lo que anote se guarda aquí y se envía más tarde.
phone-stale = El programa se renovó desde que se guardó esta tarjeta. Todas las anotaciones quedan.
phone-renew = Tomar la tarjeta nueva
phone-loading = Un momento: se calcula el plan.
phone-never-here = El plan de esta pieza nunca estuvo en este teléfono: llegará cuando responda el servidor.
phone-waits = Esta cifra la calcula el servidor y lo espera.

## What is kept and sent

phone-kept = Guardado:
phone-kept-sent = guardados aquí: #1, enviados: #2
phone-not-kept = Esto no se pudo guardar en el teléfono:
phone-refused = No aceptados por el diario, siguen aquí: #1
phone-undo = Deshacer el último
phone-send = Enviar ya

## Numbers

phone-unit = Unidad
phone-delete = Borrar una cifra
phone-right = Es correcto
phone-leave-out = Dejarlo fuera
phone-as-last = como la última vez
phone-as-planned = como se planeó
phone-as-mixed = como pide la mezcla

## Weighing

phone-which-mix = ¿Qué mezcla?
phone-how-much-sand = ¿Cuánta arena seca?
phone-part-of = #1 de #2
phone-drying = El peso hasta el que secar
phone-dry-tub = La arena ahora, sin su cubo
phone-dry-now = Cuán húmeda está ahora
phone-dry-wanted = Cuán húmeda debe quedar

## Tests

phone-which-test = ¿Qué ensayo?
phone-test-squeeze = puñado
phone-test-drop = caída
phone-test-dent = huella de bola
phone-test-bottle = botella
phone-test-cylinder = cilindro
phone-test-bar = barra
phone-test-disc = disco
phone-test-compactability = compactabilidad
phone-test-moisture = humedad

## The ten points

phone-ready-tells = Mire cada punto y márquelo solo entonces. Hasta que los diez estén marcados no hay colada.
phone-ticked = #1 de #2 marcados
phone-pour = Colar

## The pour, step by step

phone-step-of = paso #1 de #2
phone-step-red-lines = Cada uno de estos puntos se cumple
phone-step-aloud = Dígalo en voz alta
phone-step-aloud-who = Quién va adónde con qué, y qué palabra detiene a todos.
phone-step-melt = Fundir
phone-step-cope = Cerrar el molde y poner los pesos
phone-step-cope-closed = Cerrado, con pesos, y ya nadie se inclina sobre él.
phone-step-ready = ¿Está el metal bastante caliente?
phone-step-at = colar a
phone-step-not-below = no por debajo de
phone-step-ready-skim = Desescorie. Más frío, va a la lingotera.
phone-step-fill = Colar
phone-step-takes = el molde toma
phone-step-fill-full = Sin pausa, con la pileta llena hasta el final.
phone-step-wait = Esperar
phone-step-wait-hot = Déjelo reposar. Nada de agua cerca.
phone-step-open = Abrir el molde
phone-step-open-how = Tenazas y guantes: lo que está negro aún puede quemar. Humedezca la arena antes de que levante polvo.
phone-clock-begin = Primera gota
phone-clock-full = Lleno
phone-clock-opened = Abierto
phone-clock-not-begun = empieza con la primera gota
phone-clock-not-poured = la colada no se cronometró
phone-clock-filling = segundos
phone-clock-filling-within = segundos: como se planeó
phone-clock-filling-after = segundos: más de lo planeado
phone-clock-opening = demasiado pronto: hasta que se pueda abrir con seguridad
phone-clock-opening-within = quizá: hasta que se pueda abrir con seguridad
phone-clock-opening-after = se puede abrir

## How it came out

phone-how-out = ¿Cómo salió?
phone-what-poured = ¿Qué se coló?
phone-castings-of = piezas coladas: #1
phone-other-count = Otro número de piezas
phone-how-many-castings = ¿Cuántas piezas?
phone-mass-poured = Metal colado
phone-temperature = Temperatura del metal
phone-how-went = ¿Cómo entró?
phone-how-steady = con firmeza
phone-how-broken = con una pausa
phone-how-splashed = salpicó
phone-how-slow = despacio
phone-how-ran-short = faltó metal
phone-sound = ¿Sirve para su uso?
phone-sound-yes = Sí
phone-sound-no = No
phone-sound-all = Todas
phone-sound-none = Ninguna
phone-sound-some = Algunas
phone-how-many-sound = ¿Cuántas son buenas?
phone-sound-of = buenas: #1 de #2
phone-looks = ¿Qué se ve?
phone-keep = Guardar
phone-again = Otra vez desde el principio
