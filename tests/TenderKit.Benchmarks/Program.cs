var job = Job.ShortRun.WithIterationCount(15).WithToolchain(InProcessEmitToolchain.Instance);
BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args, DefaultConfig.Instance.AddJob(job).AddColumn(StatisticColumn.Min));
