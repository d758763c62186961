use browser_tests::{LAPTOP, Page, Res, Window};
#[tokio::main]
async fn main() -> Res {
    let page = Page::open(Window { width: 412, height: 823, ..LAPTOP }).await?;
    page.js("window.__l=[]; new PerformanceObserver(l=>{for(const e of l.getEntries())window.__l.push([e.startTime,e.size,e.element&&e.element.outerHTML.slice(0,80)])}).observe({type:'largest-contentful-paint',buffered:true})").await?;
    tokio::time::sleep(std::time::Duration::from_millis(500)).await;
    let r = page.driver.execute("return JSON.stringify(window.__l)", vec![]).await?;
    println!("{:?}", r.json());
    page.close().await?;
    Ok(())
}
