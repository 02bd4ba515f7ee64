namespace FlipAnalytics;

/// <summary>
/// What would turn an answer that cannot be given yet into one. Each is null where it would not, or where the owner has
/// stated it already.
/// </summary>
/// <param name="BuyFromSalePrice">Sure that it sells for this or more, buy; in the currency.</param>
/// <param name="LeaveToSalePrice">Sure that it sells for no more than this, leave it; in the currency.</param>
/// <param name="BuyToHours">Sure that it takes no more hours than these, buy.</param>
/// <param name="SalesOfType">So many more sales of the type would halve the range of the most to pay.</param>
/// <param name="SalesOfAnything">So many more sales of any types would.</param>
public sealed record WhatDecides(
    decimal? BuyFromSalePrice, decimal? LeaveToSalePrice, decimal? BuyToHours, int? SalesOfType, int? SalesOfAnything);
