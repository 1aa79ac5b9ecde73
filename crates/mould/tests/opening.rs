//! Print.
use measure::flow::Duration;
use measure::heat::*;
use measure::length::Length;
use measure::matter::{Density,Mass};
use mould::cooling::*;
use mould::opening::*;
fn p(m:f64, f:&str,b:f64,r:f64)->Poured{
 let (rho,l,cl,cs,sh,ts)= match f {"aluminium"=>(2390.,430e3,1155.,1050.,100.,557.),"iron"=>(6900.,240e3,850.,700.,150.,1130.),"copper"=>(7950.,190e3,480.,420.,130.,854.), "zinc"=>(5800.,120e3,550.,480.,60.,377.), _=>(6900.,65e3,250.,230.,40.,244.)};
 Poured{modulus:Length::from_mm(m),density:Density::from_kg_per_m3(rho),latent:HeatPerMass::from_j_per_kg(l),liquid_heat:SpecificHeat::from_j_per_kg_k(cl),solid_heat:SpecificHeat::from_j_per_kg_k(cs),superheat:TemperatureDifference::from_kelvin(sh),solidus:Temperature::from_celsius(ts),sand:HeatDrawing::from_w_rts_per_m2_k(b),mass:Mass::from_kg(4.0),sand_mass:Mass::from_kg(4.0*r)}}
#[test] fn show(){
 for f in ["aluminium","iron","copper","zinc","tin"] { for m in [2.5,4.,7.,12.,20.] { for (b,r) in [(900.,4.),(1080.,8.),(1300.,12.)] {
  let x=p(m,f,b,r); let t0=std::time::Instant::now(); let c=cooling(&x,HAND); let dt=t0.elapsed();
  let k=marks_of(&c,opening_row(f).unwrap());
  if let Some(k)=k { println!("{f} M{m} b{b} r{r}: frozen {:.1} leave {:.0} open {:.0} handle {:.0} min; air {:.0}; burnt {:.1} mm {:?} steps {}", c.frozen.unwrap().as_min(),k.leave.as_min(),k.open.as_min(),k.handle.as_min(), cooling_in_air(x.modulus,x.density,x.solid_heat,opening_row(f).unwrap().open).as_min(), c.sand_over(Temperature::from_celsius(600.0)).as_mm(),dt,c.casting.len()); } else {println!("{f} {m} {b} {r} none")}
 let _ = Duration::ZERO;
 }}}}
