use shortfall::{physics::body::capsules, physics::geometry::Geometry, physics::*, scenario::*};
fn main() {
    let which = std::env::args().nth(1).unwrap_or_default();
    let mut s = Scenario::default();
    match which.as_str() {
        "rev" => s.grab.arrow = Arrow::Down,
        "low" => s.grab.above_dring_m = -0.6,
        "roof" => s.stance = Stance::Roof { from_eave_m: 1.5 },
        "vent" => s.anchor.kind = AnchorKind::VentPipe,
        _ => {}
    }
    let t = simulate(&s).unwrap();
    let g = Geometry::of(&s).unwrap();
    let times: Vec<f64> = std::env::args().skip(2).map(|x| x.parse().unwrap()).collect();
    let caps = capsules(s.worker.mass_kg, s.worker.stature_m);
    println!(
        "<svg xmlns='http://www.w3.org/2000/svg' width='{}' height='560' style='background:white'>",
        times.len() * 260
    );
    for (i, tm) in times.iter().enumerate() {
        let q = t.at(*tm).unwrap();
        println!(
            "<g transform='translate({},520) scale(62,-62)' stroke-width='0.03' fill='none' stroke='black'>",
            i * 260 + 60
        );
        println!(
            "<path d='M0 0V{} M{} {}L{} {}' /><path d='M{} {}L{} {}' stroke='brown' stroke-width='0.06'/><path d='M-1 0H4'/>",
            g.fascia.y,
            g.eave.x,
            g.eave.y,
            g.ridge.x,
            g.ridge.y,
            g.ladder.foot.x,
            g.ladder.foot.y,
            g.ladder.tip.x,
            g.ladder.tip.y
        );
        for (p, c) in q.poses.iter().zip(&caps) {
            println!(
                "<rect x='{}' y='{}' width='{}' height='{}' rx='{}' transform='translate({},{}) rotate({})'/>",
                -c.radius_m,
                -c.half_length_m - c.radius_m,
                2.0 * c.radius_m,
                2.0 * (c.half_length_m + c.radius_m),
                c.radius_m,
                p.at.x,
                p.at.y,
                p.angle_rad.to_degrees()
            );
        }
        println!(
            "<path stroke='blue' d='M{} {}L{} {}L{} {}L{} {}'/></g><text x='{}' y='550'>{:.2}s {:.0}N</text>",
            g.anchor.x,
            g.anchor.y,
            g.eave.x,
            g.eave.y,
            q.grab.x,
            q.grab.y,
            q.dring.x,
            q.dring.y,
            i * 260 + 60,
            tm,
            q.force_n
        );
    }
    println!("</svg>");
}
