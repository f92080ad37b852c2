using System.Collections.Immutable;
using System.Globalization;
using System.Runtime.CompilerServices;
using TenderKit.Sizing.Basics;

namespace TenderKit.Tendering.Design;

/// <summary>
/// Takes the checks of one candidate, either as numbers only, to decide, or as records with their texts, to print: the same line of code does both,
/// so the two cannot differ. Deciding makes no text and takes no memory, which is what lets millions of candidates be tried.
/// </summary>
/// <param name="isRecording">Whether records are kept.</param>
public sealed class CheckList(bool isRecording)
{
    private readonly ImmutableArray<Check>.Builder? _records = isRecording ? ImmutableArray.CreateBuilder<Check>() : null;

    public bool IsRecording => _records is not null;

    /// <summary>Checks failed so far.</summary>
    public int FailedCount { get; private set; }

    /// <summary>Greatest shortfall of a failed check, fraction of what is required; 1 for yes and no.</summary>
    public double WorstShortfall { get; private set; } = double.NegativeInfinity;

    public bool Complies => FailedCount == 0;

    /// <summary>The checks as records.</summary>
    public ImmutableArray<Check> Records => _records?.ToImmutable() ?? throw new InvalidOperationException("only numbers were kept");

    /// <summary>The records of what <paramref name="checks"/> adds.</summary>
    public static ImmutableArray<Check> Record(Action<CheckList> checks)
    {
        var list = new CheckList(true);
        checks(list);
        return list.Records;
    }

    /// <summary>Forgets what was added, for the next candidate.</summary>
    public CheckList Clear()
    {
        (FailedCount, WorstShortfall) = (0, double.NegativeInfinity);
        _records?.Clear();
        return this;
    }

    public void AtLeast(string id, string item, string property, double required, double offered, string unit, string basis, int decimals = 2)
    {
        if (_records is not null) Add(new Check(id, item, property, Comparison.AtLeast, required, offered, unit, basis, decimals));
        else if (!(offered >= required)) Fail(required, required - offered);
    }

    /// <inheritdoc cref="AtLeast(string, string, string, double, double, string, string, int)"/>
    public void AtLeast(
        string id, string item, string property, double required, double offered, string unit, [InterpolatedStringHandlerArgument("")] ref Words basis, int decimals = 2) =>
        AtLeast(id, item, property, required, offered, unit, basis.Text(), decimals);

    public void AtMost(string id, string item, string property, double required, double offered, string unit, string basis, int decimals = 2)
    {
        if (_records is not null) Add(new Check(id, item, property, Comparison.AtMost, required, offered, unit, basis, decimals));
        else if (!(offered <= required)) Fail(required, offered - required);
    }

    /// <inheritdoc cref="AtMost(string, string, string, double, double, string, string, int)"/>
    public void AtMost(
        string id, string item, string property, double required, double offered, string unit, [InterpolatedStringHandlerArgument("")] ref Words basis, int decimals = 2) =>
        AtMost(id, item, property, required, offered, unit, basis.Text(), decimals);

    public void YesNo(string id, string item, string property, bool required, bool offered, string basis)
    {
        if (_records is not null) Add(Check.YesNo(id, item, property, required, offered, basis));
        else if (required && !offered) Fail(0, 0);
    }

    /// <inheritdoc cref="YesNo(string, string, string, bool, bool, string)"/>
    public void YesNo(string id, string item, string property, bool required, bool offered, [InterpolatedStringHandlerArgument("")] ref Words basis) =>
        YesNo(id, item, property, required, offered, basis.Text());

    /// <summary>A check that is there already.</summary>
    public void Add(Check check)
    {
        _records?.Add(check);
        if (!check.Complies) Fail(check.IsYesNo ? 0 : check.Required, check.Comparison == Comparison.AtLeast ? check.Required - check.Offered : check.Offered - check.Required);
    }

    /// <summary>The share of what is required that is lacking, as <see cref="Check.MarginFraction"/> has it with the other sign; 1 where that has none.</summary>
    private void Fail(double required, double lacking)
    {
        FailedCount++;
        WorstShortfall = Math.Max(WorstShortfall, required == 0 ? 1 : lacking / Math.Abs(required));
    }

    /// <summary>A text with values in it, made only where records are kept.</summary>
    [InterpolatedStringHandler]
    public ref struct Words
    {
        private readonly bool _isWanted;
        private DefaultInterpolatedStringHandler _text;

        public Words(int literalLength, int formattedCount, CheckList list, out bool isWanted)
        {
            _isWanted = isWanted = list.IsRecording;
            if (isWanted) _text = new DefaultInterpolatedStringHandler(literalLength, formattedCount, CultureInfo.InvariantCulture);
        }

        public void AppendLiteral(string value) => _text.AppendLiteral(value);

        public void AppendFormatted<T>(T value) => _text.AppendFormatted(value);

        public void AppendFormatted<T>(T value, string? format) => _text.AppendFormatted(value, format);

        internal string Text() => _isWanted ? _text.ToStringAndClear() : "";
    }
}
