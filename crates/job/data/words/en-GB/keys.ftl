# What is typed in a job's file, as the sheet calls it.

key-name = name of the job
key-date = day of the pour
key-alloy = alloy
key-count = castings in one mould
key-serves = what it serves for
key-form = form of the stock
key-loss = melt loss
key-pig = kept for the ingot mould
key-flask = flask
key-unit = unit of the mesh
key-up = which way of it is up
key-from = what the mesh is of
key-contraction = your own contraction
key-machined = faces are machined
key-rapped = the pattern is rapped well
key-printed = printed in layers of
key-joint = height of the joint
key-sprue = place of the sprue
key-gates = places of the gates
key-feeders = places of the feeders
key-pour-height = height from joint to basin

## The words that may be chosen

said-ornament = to look at
said-machine = in a machine
said-food = for food or drink
said-pressure = holds pressure
said-lifting = lifts, or holds a person
said-brake = stops something
said-ingot = ingot, clean returns
said-heavy = castings broken up
said-thin = sheet, painted or oily
said-swarf = turnings, filings
said-cans = drink cans
said-part = the part as it is wanted
said-worn-original = a worn original

## The shop

key-units = units that stand first
key-words = language, and British or American words
key-furnace = kind of furnace
key-heap-mass = sand in the heap
key-heap-bond = what binds it
key-heap-moisture = its moisture
said-metric = kg and mm
said-inch = lb and inches
said-uk = English, British words
said-us = English, American words
said-fr = French
said-es = Spanish
said-bentonite = bentonite
said-natural = its own clay
said-oil = oil
said-fuel-crucible = crucible over gas, oil or charcoal
said-electric-crucible = crucible, electric
said-induction = induction
said-cupola = cupola
