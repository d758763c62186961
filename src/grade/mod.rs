//! Findings to a grade: scoring, the report, and what single changes would do.

pub mod changes;
pub mod pieces;
pub mod report;
pub mod scoring;
