use browser_tests::{LAPTOP, Page, Res, Window};

async fn shot(page: &Page, name: &str) -> Res {
    page.driver.screenshot(std::path::Path::new(&format!("/tmp/shots/{name}.png"))).await?;
    Ok(())
}
#[tokio::main]
async fn main() -> Res {
    let _ = std::fs::create_dir_all("/tmp/shots");
    let which: Vec<String> = std::env::args().skip(1).collect();
    let sizes = [
        ("phone", 390, 664),
        ("laptop", 1366, 768),
        ("wall", 1920, 1080),
        ("side", 844, 390),
        ("small", 320, 640),
    ];
    let sets: &[(&str, &str)] = &[
        ("default", ""),
        ("roof", r#"{"stance":{"roof":{"from_eave_m":1.5}}}"#),
        ("reversed", r#"{"grab":{"arrow":"down"}}"#),
        ("low", r#"{"grab":{"above_dring_m":-0.5}}"#),
        ("boards", r#"{"anchor":{"kind":"ridge_plate_in_sheathing"}}"#),
        ("vent", r#"{"anchor":{"kind":"vent_pipe"}}"#),
        ("chimney", r#"{"anchor":{"kind":"chimney_sling"}}"#),
        ("gutter", r#"{"anchor":{"kind":"gutter"}}"#),
        ("latch", r#"{"grab":{"latch":"open","bolt":"loose"}}"#),
        (
            "deck",
            r#"{"house":{"below":{"obstacle":{"height_m":1.2,"distance_m":0.0,"width_m":1.3}}},"ladder":{"foot_distance_m":1.45},"grab":{"above_dring_m":-0.5},"stance":{"ladder":{"standing_height_m":2.8}}}"#,
        ),
        ("frayed", r#"{"gear":{"rope":"frayed"},"grab":{"above_dring_m":-0.6}}"#),
        ("slack", r#"{"stance":{"roof":{"from_eave_m":1.5}},"lifeline":{"slack_m":1.0}}"#),
        (
            "cape",
            r#"{"house":{"eave_height_m":2.9,"roof_pitch_rad":0.7853981633974483,"half_span_m":3.9,"overhang_m":0.35},"ladder":{"foot_distance_m":0.75,"length_m":4.2},"stance":{"roof":{"from_eave_m":1.9}},"lifeline":{"length_m":11}}"#,
        ),
    ];
    let want = |n: &str| which.is_empty() || which.iter().any(|w| w == n);
    for (size, w, h) in sizes {
        if !want(size) {
            continue;
        }
        let page = Page::open(Window { width: w, height: h, ..LAPTOP }).await?;
        if which.iter().any(|x| x == "fr") {
            page.js("document.querySelector('.langs [lang=fr]').click()").await?;
        }
        if which.iter().any(|x| x == "dark") {
            page.js("document.documentElement.dataset.theme='dark'").await?;
        }
        if which.iter().any(|x| x == "large") {
            page.js("document.querySelector('#lettering').value='large'; document.querySelector('#lettering').dispatchEvent(new Event('change'))").await?;
        }
        for (name, set) in sets {
            if which.iter().any(|x| sets.iter().any(|s| s.0 == x)) && !which.iter().any(|x| x == name) {
                continue;
            }
            let link: String = set.bytes().map(|b| format!("%{b:02x}")).collect();
            if !set.is_empty() {
                page.js(&format!("location.hash='#s={link}'")).await?;
            }
            tokio::time::sleep(std::time::Duration::from_millis(300)).await;
            page.js("document.querySelector('#keep-this')?.click()").await?;
            tokio::time::sleep(std::time::Duration::from_millis(250)).await;
            shot(&page, &format!("{size}-{name}-1before")).await?;
            page.js("document.querySelectorAll('.answer input')[0].click(); document.querySelector('#play')?.click()").await?;
            tokio::time::sleep(std::time::Duration::from_millis(1300)).await;
            shot(&page, &format!("{size}-{name}-2playing")).await?;
            page.js("document.querySelector('.player .main')?.click()").await?;
            tokio::time::sleep(std::time::Duration::from_millis(900)).await;
            shot(&page, &format!("{size}-{name}-3after")).await?;
            if which.iter().any(|x| x == "layers") {
                for l in ["why", "change", "to-wall", "to-room", "to-sure"] {
                    page.js(&format!("document.querySelector('#{l}')?.click()")).await?;
                    tokio::time::sleep(std::time::Duration::from_millis(1500)).await;
                    shot(&page, &format!("{size}-{name}-4{l}")).await?;
                    page.js("document.querySelector('#shut')?.click()").await?;
                    tokio::time::sleep(std::time::Duration::from_millis(100)).await;
                }
            }
            page.js("document.querySelector('#leave-fall')?.click()").await?;
            tokio::time::sleep(std::time::Duration::from_millis(150)).await;
            if which.iter().any(|x| x == "layers") {
                page.js("document.querySelector('.lens-button[data-part=Grab]')?.click()").await?;
                tokio::time::sleep(std::time::Duration::from_millis(300)).await;
                shot(&page, &format!("{size}-{name}-5lens")).await?;
                page.js(
                    "document.querySelector('#shut')?.click(); document.querySelector('#today')?.click()",
                )
                .await?;
                tokio::time::sleep(std::time::Duration::from_millis(300)).await;
                shot(&page, &format!("{size}-{name}-5set-up")).await?;
                page.js(
                    "document.querySelector('#shut')?.click(); document.querySelector('#thumb')?.click()",
                )
                .await?;
                tokio::time::sleep(std::time::Duration::from_millis(300)).await;
                shot(&page, &format!("{size}-{name}-6whole")).await?;
                page.js("document.querySelector('#thumb')?.click()").await?;
            }
        }
        for e in page.console_errors().await?.into_iter().take(3) {
            println!("{size}: {:.300}", e);
        }
        page.close().await?;
    }
    Ok(())
}
