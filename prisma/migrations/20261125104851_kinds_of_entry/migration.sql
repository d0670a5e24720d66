ALTER TYPE "Kind" ADD VALUE 'material';
ALTER TYPE "Kind" ADD VALUE 'source';
ALTER TYPE "Kind" ADD VALUE 'row';
