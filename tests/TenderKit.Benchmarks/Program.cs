using BenchmarkDotNet.Columns;
using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Running;
using BenchmarkDotNet.Toolchains.InProcess.Emit;
using TenderKit.Benchmarks.Scale;

if (args is ["scale", ..]) return ScaleRun.Run(args);
if (args is ["workbook", ..]) return WorkbookRun.Run(args);
var job = Job.ShortRun.WithIterationCount(15).WithToolchain(InProcessEmitToolchain.Instance);
BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args, DefaultConfig.Instance.AddJob(job).AddColumn(StatisticColumn.Min));
return 0;
