using System.Collections.Immutable;

namespace TenderKit.Tendering.Settings;

/// <summary>What is handed in besides the documents made here.</summary>
public sealed record Submission(BidSecurity? Security, ImmutableArray<SubmittedForm> Forms, ImmutableArray<Deviation> Deviations)
{
    public static readonly Submission None = new(null, [], []);

    public bool IsEmpty => Security is null && Forms.IsEmpty && Deviations.IsEmpty;
}

/// <summary>Security for the bid: a share of its total, or an amount.</summary>
/// <param name="DaysBeyondValidity">Days it must outlive the bid.</param>
public sealed record BidSecurity(decimal? ShareFraction, decimal? Amount, int DaysBeyondValidity, string Clause);

/// <summary>A form or certificate asked for.</summary>
/// <param name="Expires">Last day it holds, or null.</param>
/// <param name="File">File in the tender's folder, or empty.</param>
/// <param name="FileFound">Whether that file was there.</param>
public sealed record SubmittedForm(string Form, string Clause, string SignedBy, DateOnly? Expires, string File, bool FileFound);

/// <summary>Something offered otherwise than asked.</summary>
public sealed record Deviation(string Clause, string Text, string Reason);
