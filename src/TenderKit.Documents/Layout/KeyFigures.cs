using System.Collections.Immutable;

namespace TenderKit.Documents.Layout;

/// <summary>One figure and what it is.</summary>
internal sealed record KeyFigure(string Value, string Name);

/// <summary>A row of figures in large type with their names below, between two rules.</summary>
internal sealed record KeyFigures(ImmutableArray<KeyFigure> Items) : Block
{
    public override double LeadHeight => 10 * TextStyle.Step;

    public override void Place(PageFlow flow)
    {
        flow.Need(LeadHeight);
        var column = Paper.MeasurePt / Items.Length;
        var deepest = 0;
        flow.Rule(Paper.LeftPt, Paper.RightPt, flow.Y, Ink.FirmPt, Ink.Black);
        for (var i = 0; i < Items.Length; i++)
        {
            var x = Paper.LeftPt + (i * column);
            var names = LineBreaker.Break(Items[i].Name, TextStyle.Quiet, column - 12);
            var value = Items[i].Value;
            flow.Tagged(TagKind.Paragraph, () =>
            {
                flow.Say(value, TextStyle.Figure, x, flow.Y + TextStyle.Step, (x, x + column));
                for (var l = 0; l < names.Length; l++) flow.Line(names[l], TextStyle.Quiet, x, flow.Y + (6 * TextStyle.Step) + (l * TextStyle.Quiet.Leading), (x, x + column));
            });
            deepest = Math.Max(deepest, names.Length);
        }

        flow.Y += (7 * TextStyle.Step) + (deepest * TextStyle.Quiet.Leading);
        flow.Rule(Paper.LeftPt, Paper.RightPt, flow.Y, Ink.ThinPt, Ink.Black);
        flow.Snap();
        flow.Y += 3 * TextStyle.Step;
    }
}
